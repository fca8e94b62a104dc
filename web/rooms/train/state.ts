/** What is in hand in the make-up: a vehicle taken up, a rider chosen, and where it would go. */
import { computed, signal } from '@preact/signals';
import { joined, left, moved, single } from '../../../desk/make-up.ts';
import type { LoadedTrain } from '../../../engine/things/train/loaded.ts';
import { loadTrain } from '../../../engine/things/train/loaded.ts';
import { shelter } from '../../parts/shed.ts';
import { change, type Json, outing, paper } from '../../state/session.ts';

export type Lifted =
  | { readonly from: 'train'; readonly index: number; readonly label: string }
  | { readonly from: 'shed'; readonly vehicle: Json; readonly label: string };

export const lifted = signal<Lifted | null>(null);
/** Place before which a carried vehicle would stand; null: nowhere. */
export const gap = signal<number | null>(null);
/** `vehicle/seat` over which a carried rider hangs. */
export const seatUnder = signal<string | null>(null);
/** Index of the rider in hand. */
export const chosen = signal<number | null>(null);
/** Said to those who do not see it. */
export const told = signal('');

export const train = computed<LoadedTrain | null>(
  () => outing.value && loadTrain(outing.value.train, outing.value.riders),
);

/** Do it if it changes anything, and say so. */
export function step(next: Json, words: string): void {
  change(next);
  told.value = words;
}

/** A vehicle put before the place `at`, from the train or from the shed. */
export function put(what: Lifted, at: number): void {
  lifted.value = null;
  if (what.from === 'shed')
    return step(joined(paper.value, what.vehicle, at), `${what.label} joins at place ${at + 1}.`);
  const to = at > what.index ? at - 1 : at;
  if (to === what.index) return;
  step(moved(paper.value, what.index, to), `${what.label} stands at place ${to + 1}.`);
}

export function leave(index: number, label: string): void {
  const list = single(paper.value);
  if (list.length <= 1) return;
  lifted.value = null;
  shelter(list[index].vehicle);
  step(left(paper.value, index), `${label} is left behind; its riders wait on the platform.`);
}
