/** What a compilation gathers beside its result: assumptions that it made and troubles that it met. */
import { assumed, defaultRow } from '../../data/index.ts';
import { INCH } from '../../engine/base/constants.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import type { Assumption } from '../../engine/outing/types.ts';
import type { FieldPath, Trouble } from '../problem.ts';

export interface Notes {
  readonly assumptions: Assumption[];
  readonly troubles: Trouble[];
}

export const newNotes = (): Notes => ({ assumptions: [], troubles: [] });

/** The given quantity, or the assumed one with a note that it was assumed. */
export function orAssumed(
  given: Quantity | undefined,
  key: string,
  of: string,
  where: string,
  notes: Notes,
): Quantity {
  if (given) return given;
  note(notes, key, of, where);
  return assumed(key);
}

/** The likely figure alone of an assumed value, with a note that it was assumed. */
export function plainAssumed(key: string, of: string, where: string, notes: Notes): number {
  note(notes, key, of, where);
  return defaultRow(key).value;
}

export function note(notes: Notes, key: string, of: string, where: string): void {
  if (notes.assumptions.some((a) => a.key === key && a.where === where)) return;
  notes.assumptions.push({ of, where, key, source: defaultRow(key).source });
}

/** A note put before all others: what is likeliest to change the answer. */
export function noteFirst(notes: Notes, key: string, of: string, where: string): void {
  notes.assumptions.unshift({ of, where, key, source: defaultRow(key).source });
}

export function trouble(notes: Notes, path: FieldPath, found: string, expected: string): void {
  notes.troubles.push({ path, found, expected });
}

/** A length that was read, as a rule shows it in either unit: what was written is found again. */
export const bySmallRule = (m: number): string =>
  `${Number((m * 1000).toFixed(2))} mm (${Number((m / INCH).toFixed(3))} in)`;
