/** What comes out of departures and arrivals: service days and distance of every vehicle, riders carried. */
import type { Content } from '../papers/record/fields.ts';
import { contentOf, type Standing, standing } from './amended.ts';
import { dayOf, type Entry } from './record.ts';

export interface Trip {
  readonly departure: Standing;
  readonly left: Content<'departure'>;
  readonly day: string;
  /** Absent: it has not arrived, as far as anybody said. */
  readonly arrival?: Standing;
  readonly arrived?: Content<'arrival'>;
}

/** Every departure with its arrival; of two arrivals of one departure the later stands. */
export function trips(entries: readonly Entry[]): Trip[] {
  const arrivals = new Map(
    standing(entries, 'arrival').flatMap((arrival) => {
      const arrived = contentOf(arrival, 'arrival');
      return arrived ? [[arrived.departure, { arrival, arrived }] as const] : [];
    }),
  );
  return standing(entries, 'departure').flatMap((departure) => {
    const left = contentOf(departure, 'departure');
    if (!left) return [];
    const closed = arrivals.get(departure.first.row.hash);
    return [{ departure, left, day: dayOf(departure.first.body), ...(closed ?? {}) }];
  });
}

/** Departures that have one of these vehicles out and have not arrived. */
export const stillOut = (all: readonly Trip[], vehicles: readonly string[]): Trip[] =>
  all.filter(({ left, arrival }) => !arrival && left.vehicles.some((v) => vehicles.includes(v)));

export interface Service {
  readonly vehicle: string;
  /** Days on which it ran, oldest first. */
  readonly days: readonly string[];
  /** Of the runs whose distance was said, m. */
  readonly distance: number;
  readonly runs: number;
  /** Runs whose distance nobody said: its distance is more than that. */
  readonly unsaid: number;
}

/** By the vehicles' names. */
export function service(all: readonly Trip[]): Service[] {
  const found = new Map<string, { days: Set<string>; distance: number; runs: number; unsaid: number }>();
  for (const { left, day, arrived } of all)
    for (const vehicle of new Set(left.vehicles)) {
      const one = found.get(vehicle) ?? { days: new Set(), distance: 0, runs: 0, unsaid: 0 };
      one.days.add(day);
      one.runs++;
      if (arrived?.distance === undefined) one.unsaid++;
      else one.distance += arrived.distance;
      found.set(vehicle, one);
    }
  return [...found]
    .map(([vehicle, { days, ...rest }]) => ({ vehicle, days: [...days].sort(), ...rest }))
    .sort((a, b) => (a.vehicle < b.vehicle ? -1 : 1));
}

export interface Carried {
  readonly riders: number;
  /** Runs of which nobody said how many rode. */
  readonly unsaid: number;
}

export const carried = (all: readonly Trip[]): Carried => ({
  riders: all.reduce((sum, { arrived }) => sum + (arrived?.carried ?? 0), 0),
  unsaid: all.filter(({ arrived }) => arrived?.carried === undefined).length,
});
