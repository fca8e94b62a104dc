/** Certificates as they stand on the day of the outing. Without a day nobody can tell. */
import type { Shown } from '../../engine/things/in-date.ts';
import type { OutingFile } from '../schema/index.ts';

type Written = NonNullable<OutingFile['shown']>[number];

export const shownOn = ({ shown = [], date }: Pick<OutingFile, 'shown' | 'date'>): readonly Shown[] =>
  shown.map((one) => ({
    what: one.what,
    ...(one.of === undefined ? {} : { of: one.of }),
    state: date === undefined ? 'unknown' : stateOf(one, date),
    ...(one.until === undefined ? {} : { last: one.until }),
    ...(one.signedFor === undefined ? {} : { signedFor: one.signedFor }),
  }));

/** Days as they are written stand in the order of time. */
function stateOf({ on, until, graceTo, serviceLeft }: Written, date: string): Shown['state'] {
  if (on > date || serviceLeft === 0) return 'out';
  if (until === undefined) return serviceLeft === undefined ? 'unknown' : 'stands';
  if (date <= until) return 'stands';
  return graceTo !== undefined && date <= graceTo ? 'grace' : 'out';
}
