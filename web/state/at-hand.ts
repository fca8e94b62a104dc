/** Whether the records of this device have been asked for what is on the screen: no card goes out before. */
import { signal } from '@preact/signals';

/** They have, or there are none, or `silence` says why they could not be. */
export const looked = signal(false);

/** That there are records and they are not in the answer, in words; empty: they are, or there are none. */
export const silence = signal('');
