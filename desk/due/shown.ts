/**
 * What is recorded, shown to the host of an outing: the certificates of its vehicles and people and of the club, as they
 * were written, put into its paper. Whether they stand on its day is reckoned from the paper like everything else.
 */
import { type DueItem, dueOn } from '../../records/due.ts';
import { nameIn } from '../../records/names.ts';
import type { Entry } from '../../records/record.ts';
import type { Named } from '../../records/store.ts';

type Json = Readonly<Record<string, unknown>>;

/** Of what nobody can tell how long it stands, nothing is said. */
function written(
  { certificate, since, state, last, graceTo, serviceLeft }: DueItem,
  names: readonly Named[],
): Json {
  const { what, of, person } = certificate;
  const whose = of ?? (person === undefined ? undefined : nameIn(names, person));
  const ends = state === 'unknown' ? {} : { until: last, graceTo, serviceLeft };
  return {
    what,
    ...(whose === undefined ? {} : { of: whose }),
    on: since,
    ...Object.fromEntries(Object.entries(ends).filter(([, end]) => end !== undefined)),
  };
}

/** @param day of the outing: what its own date says, else today */
export function withShown(
  paper: Json,
  entries: readonly Entry[],
  names: readonly Named[],
  day: string,
): Json {
  const shown = dueOn(entries, day).map((item) => written(item, names));
  // What was written into the paper by hand stays: of several the best counts.
  const byHand = (paper['shown'] ?? []) as readonly Json[];
  const fresh = shown.filter((one) => !byHand.some((other) => JSON.stringify(other) === JSON.stringify(one)));
  return fresh.length === 0 ? paper : { ...paper, shown: [...byHand, ...fresh] };
}
