/**
 * Time at the handles, from departures and arrivals: as much as trains that left by a record. One that is still out leaves it
 * unknown, and so does a train that left without a record, as far as nobody writes it by hand.
 */
import type { Entry } from './record.ts';
import { trips } from './service.ts';

/** One train that somebody drove; times in ms. */
export interface Drive {
  readonly from: number;
  /** Absent: it has not arrived, as far as anybody said. */
  readonly to?: number;
}

/** By reference to the person, or by what two references to one have in common. */
export function drives(
  entries: readonly Entry[],
  same: (person: string) => string,
): ReadonlyMap<string, readonly Drive[]> {
  const of = new Map<string, Drive[]>();
  for (const { departure, left, arrival } of trips(entries)) {
    const from = Date.parse(departure.first.body.said);
    const said = (arrival?.amendments.at(-1) ?? arrival?.first)?.body.said;
    const drive = { from, ...(said === undefined ? {} : { to: Date.parse(said) }) };
    const drivers = left.crew.filter(({ duty }) => duty === 'driver').map(({ person }) => same(person));
    for (const who of new Set(drivers)) of.set(who, [...(of.get(who) ?? []), drive]);
  }
  return of;
}

/**
 * Time at the handles in a turn when an outing is over, s: what was driven before it leaves, and all of the outing.
 * @param since when the turn began @param leaves @param back when the outing begins and is over, ms
 * @returns undefined: nobody can tell
 */
export function drivenIn(
  all: readonly Drive[],
  since: number,
  leaves: number,
  back: number,
): number | undefined {
  if (!(since <= leaves && leaves < back)) return undefined;
  const before = all.filter(({ from, to }) => from < leaves && (to === undefined || to > since));
  if (before.some(({ to }) => to === undefined)) return undefined;
  const spans = [...before.map(({ from, to }) => [from, to as number] as const), [leaves, back] as const];
  // Two trains at once are one time at the handles.
  let [sum, until] = [0, since];
  for (const [from, to] of spans.sort(([a], [b]) => a - b)) {
    sum += Math.max(0, Math.min(to, back) - Math.max(from, until));
    until = Math.max(until, to);
  }
  return sum / 1000;
}
