/** The word of the train that is being begun: while its questions are on the screen, no other word is. */
import { signal } from '@preact/signals';
import type { Verdict } from '../../engine/questions/finding.ts';

export interface Growing {
  readonly verdict: Verdict;
  /** Being reckoned. */
  readonly busy: boolean;
}

export const growing = signal<Growing>({ verdict: 'unknown', busy: false });
