/** Certificates as they stand on the day of the outing. Without a day nobody can tell. */
import type { Shown } from '../../engine/things/in-date.ts';
import type { Train } from '../../engine/things/train/types.ts';
import type { OutingFile } from '../schema/index.ts';
import { sameName } from './named.ts';

type Written = NonNullable<OutingFile['shown']>[number];

type File = Pick<OutingFile, 'shown' | 'date' | 'riders' | 'crew'>;

/**
 * @param accepted names of those whose certificates the host accepts, as it spells them
 *
 * One that names several alike without a number is of none of them: of which, nobody said.
 */
export const shownOn = (
  { shown = [], date, riders = [], crew = [] }: File,
  { vehicles }: Pick<Train, 'vehicles'> = { vehicles: [] },
  accepted: readonly string[] = [],
): readonly Shown[] =>
  shown.map((one) => ({
    what: one.what,
    ...(one.of === undefined ? {} : { of: asHere(one.of, [...vehicles, ...riders, ...crew]) }),
    state: date === undefined ? 'unknown' : stateOf(one, date),
    ...(one.until === undefined ? {} : { last: one.until }),
    ...(one.by === undefined ? {} : { by: accepted.find((name) => sameName(name, one.by ?? '')) ?? one.by }),
    ...(one.signedFor === undefined ? {} : { signedFor: one.signedFor }),
  }));

/** As this outing spells it. */
const asHere = (of: string, all: readonly { readonly name: string }[]): string =>
  all.find(({ name }) => sameName(name, of))?.name ?? of;

/** Days as they are written stand in the order of time. */
function stateOf({ on, until, graceTo, serviceLeft }: Written, date: string): Shown['state'] {
  if (on > date || serviceLeft === 0) return 'out';
  if (until === undefined) return serviceLeft === undefined ? 'unknown' : 'stands';
  if (date <= until) return 'stands';
  return graceTo !== undefined && date <= graceTo ? 'grace' : 'out';
}
