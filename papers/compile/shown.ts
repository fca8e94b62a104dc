/** Certificates as they stand on the day of the outing. Without a day nobody can tell. */
import type { Shown } from '../../engine/things/in-date.ts';
import { dueAfter, type Interval, readInterval, stateOn, type Use } from '../due/interval.ts';
import type { OutingFile } from '../schema/index.ts';

type Written = NonNullable<OutingFile['shown']>[number];

export const shownOn = ({ shown, date }: Pick<OutingFile, 'shown' | 'date'>): readonly Shown[] | undefined =>
  shown?.map((one) => ({
    what: one.what,
    ...(one.of === undefined ? {} : { of: one.of }),
    ...(date === undefined ? { state: 'unknown' } : standing(one, date)),
  }));

type Standing = Pick<Shown, 'state' | 'last'>;

/** What it says of its end and its interval must both stand. */
function standing({ on, until, interval, serviceDays }: Written, date: string): Standing {
  // What begins later is not in date, and what was before its first day is no matter.
  if (on > date) return { state: 'out' };
  const rule = interval === undefined ? undefined : readInterval(interval);
  const ruled = rule && byRule(rule, on, date, serviceDays === undefined ? {} : { gone: serviceDays });
  if (until === undefined) return ruled ?? { state: 'unknown' };
  if (date > until) return { state: 'out', last: until };
  if (!ruled) return { state: 'stands', last: until };
  return ruled.last !== undefined && ruled.last < until ? ruled : { ...ruled, last: until };
}

function byRule(rule: Interval, on: string, date: string, use: Use): Standing {
  const state = stateOn(rule, on, date, use);
  const { last } = dueAfter(rule, on, date, use);
  const ended = last === undefined ? {} : { last };
  switch (state) {
    case 'stands':
    case 'due':
      return { state: 'stands', ...ended };
    case 'grace':
    case 'unknown':
      return { state, ...ended };
    default:
      return { state: 'out', ...ended };
  }
}
