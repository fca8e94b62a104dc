/**
 * The day in a word each: the rail, dark or daylight, who came and who left. Each is a change of the outing's paper, so
 * that what is kept, printed and asked about is the day as it is.
 */
import { wayBack } from '../engine/outing/moves.ts';
import type { OtherTrains, Outing } from '../engine/outing/types.ts';
import { beneath, brakedRail, isBare, type RailState, sandedOn } from '../engine/things/rail.ts';
import { isCar } from '../engine/things/train/cars.ts';
import type { Rider } from '../engine/things/train/types.ts';
import { boarded, letOff, ridersOf, type Seating } from './make-up.ts';

type Json = Record<string, unknown>;

export const peopleKinds = ['adult', 'heavy', 'youth', 'child'] as const;
export type PeopleKind = (typeof peopleKinds)[number];

export const kindWords: Readonly<Record<PeopleKind, readonly [one: string, more: string]>> = {
  adult: ['adult', 'adults'],
  heavy: ['heavy adult', 'heavy adults'],
  youth: ['youth', 'youths'],
  child: ['child', 'children'],
};

const withConditions = (paper: Json, part: Json): Json => {
  const next = { ...(paper['conditions'] as Json | undefined), ...part };
  const kept = Object.entries(next).filter(([, value]) => value !== undefined);
  return { ...paper, conditions: Object.fromEntries(kept) };
};

/** What was measured on the rail as it was says nothing of another; of the same rail with sand on it what lies beneath. */
export function withRail(paper: Json, railState: RailState): Json {
  const was = (paper['conditions'] as Json | undefined)?.['railState'] as RailState | undefined;
  const same = was !== undefined && brakedRail(was) === brakedRail(railState);
  return withConditions(paper, { railState, ...(same ? {} : { adhesion: undefined }) });
}

/** The engine throws sand, on whatever rail there is; or no longer. */
export const withSand = (paper: Json, today: RailState): Json =>
  withRail(paper, isBare(today) ? sandedOn(today) : beneath(today));

/** The line has two ends and the train comes back with its engine leading: each way has speeds, stops and counts of its own. */
export const hasWayBack = (outing: Outing): boolean =>
  outing.wayBack !== 'pushed' && wayBack(outing) !== undefined;

/** The same train the other way over the line. */
export const withWayBack = (paper: Json): Json => ({
  ...paper,
  direction: paper['direction'] === 'reverse' ? 'forward' : 'reverse',
});

/** Whether others are on the line meanwhile, and which way they run. */
export const withOthers = (paper: Json, otherTrains: OtherTrains): Json => ({ ...paper, otherTrains });

export const withDark = (paper: Json, dark: boolean): Json =>
  withConditions(paper, { night: dark ? true : undefined });

/** Said, and not only not said. */
export const withDaylight = (paper: Json): Json => withConditions(paper, { night: false });

/** The sky as somebody looked at it, as it is written. */
export const withSky = (
  paper: Json,
  sky: {
    readonly wind?: string;
    readonly temperature?: string;
    readonly lightning?: boolean;
    readonly visibility?: string;
  },
): Json => withConditions(paper, sky);

/** People aboard the cars, driver and guard not counted. */
export const aboard = ({ riders, train }: Outing): Rider[] => {
  const cars = new Set(train.vehicles.filter(isCar).map((v) => v.id));
  return riders.filter((r) => r.duty === 'rider' && cars.has(r.vehicle ?? '') && r.seat !== undefined);
};

/** A free seat on the car with the fewest people; undefined: every seat is taken. */
export function freeSeat({ riders, train }: Outing): Seating | undefined {
  const on = (id: string): readonly Rider[] => riders.filter((r) => r.vehicle === id);
  const cars = train.vehicles.filter(isCar).flatMap((car) => {
    const seat = car.seats.find((s) => !s.driver && !on(car.id).some((r) => r.seat === s.id));
    return seat ? [{ vehicle: car.id, seat: seat.id, people: on(car.id).length }] : [];
  });
  const [best] = cars.sort((a, b) => a.people - b.people);
  return best && { vehicle: best.vehicle, seat: best.seat };
}

/** One more of a kind on a free seat; undefined: none is free. */
export function oneMore(paper: Json, outing: Outing, kind: PeopleKind): Json | undefined {
  const seat = freeSeat(outing);
  return seat && boarded(paper, { typical: kind }, seat);
}

/** One of a kind fewer: whoever came last, one who holds a child last of all; undefined: none is aboard. */
export function oneFewer(paper: Json, outing: Outing, kind: PeopleKind): Json | undefined {
  const entries = ridersOf(paper);
  const there = aboard(outing).filter((r) => {
    const heavy = entries[outing.riders.indexOf(r)]?.typical === 'heavy';
    return kind === 'heavy' ? heavy : r.ageGroup === kind && !heavy;
  });
  const free = there.filter((r) => !outing.riders.some((other) => other.heldBy === r.id));
  const last = (free.length > 0 ? free : there).at(-1);
  return last && letOff(paper, outing.riders.indexOf(last));
}
