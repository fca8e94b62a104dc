/** Patterns: which kinds of units may ride together on a kind of car, and how well it is then loaded. */
import { type Arrangement, arrange, type Slot } from './arrange.ts';
import { type Car, mayRide, sitterOf } from './car.ts';
import type { SeatingProblem } from './types.ts';
import { classMass, classOf, type Unit } from './units.ts';

export interface Pattern {
  /** How many units of each kind. */
  readonly counts: readonly number[];
  readonly margin: number;
  readonly arrangement: Arrangement;
}

export interface CarKind {
  readonly car: Car;
  /** Indices of the cars that are alike. */
  readonly cars: readonly number[];
  readonly patterns: readonly Pattern[];
}

export interface PatternTable {
  readonly kinds: readonly string[];
  /** Units by kind. */
  readonly units: readonly (readonly Unit[])[];
  readonly carKinds: readonly CarKind[];
  /** All arrangements of all patterns were tried. */
  readonly complete: boolean;
  readonly grain: number;
}

export const unitCounts = (table: PatternTable): number[] => table.units.map((u) => u.length);

/** Undefined when there would be more patterns than `most`. */
export function buildPatterns(
  problem: SeatingProblem,
  cars: readonly Car[],
  units: readonly Unit[],
  grain: number,
  most: number,
): PatternTable | undefined {
  const kinds = [...new Set(units.map((u) => u.kind))];
  const byKind = kinds.map((k) => units.filter((u) => u.kind === k));
  const carKeys = [...new Set(cars.map((c) => c.key))];
  let complete = true;
  let total = 0;
  const carKinds: CarKind[] = [];
  for (const key of carKeys) {
    const alike = cars.flatMap((c, i) => (c.key === key ? [i] : []));
    const car = cars[alike[0]];
    const counts = countVectors(byKind, car.seats.length, most - total);
    if (!counts) return undefined;
    total += counts.length;
    const patterns = counts.flatMap((c) => {
      const slots = slotsOf(byKind, c, grain);
      if (
        !mayRide(
          car,
          slots.map((s) => s.sitter),
          problem,
        )
      )
        return [];
      const arranged = arrange(car, slots, problem.rules);
      complete = complete && arranged.complete;
      return arranged.best ? [{ counts: c, margin: arranged.margin, arrangement: arranged.best }] : [];
    });
    carKinds.push({ car, cars: alike, patterns });
  }
  return { kinds, units: byKind, carKinds, complete, grain };
}

/** Every way to take units that fit the seats; undefined beyond `most`. */
function countVectors(
  byKind: readonly (readonly Unit[])[],
  seats: number,
  most: number,
): number[][] | undefined {
  const out: number[][] = [];
  const counts = byKind.map(() => 0);
  const take = (kind: number, left: number): boolean => {
    if (kind === byKind.length) {
      out.push([...counts]);
      return out.length <= most;
    }
    const size = byKind[kind][0].riders.length;
    for (let n = 0; n <= byKind[kind].length && n * size <= left; n++) {
      counts[kind] = n;
      if (!take(kind + 1, left - n * size)) return false;
    }
    counts[kind] = 0;
    return true;
  };
  return take(0, seats) ? out : undefined;
}

/** The people of a pattern, taken from the first units of each kind. */
export function slotsOf(
  byKind: readonly (readonly Unit[])[],
  counts: readonly number[],
  grain: number,
): Slot[] {
  return slotsOfUnits(
    counts.flatMap((n, k) => byKind[k].slice(0, n)),
    grain,
  );
}

export function slotsOfUnits(units: readonly Unit[], grain: number): Slot[] {
  const riders = units.flatMap((u) => u.riders);
  return riders.map((rider) => {
    const holder = rider.heldBy === undefined ? -1 : riders.findIndex((r) => r.id === rider.heldBy);
    return {
      rider,
      sitter: sitterOf(rider, classMass(rider, grain)),
      class: classOf(rider, grain),
      ...(holder >= 0 ? { holder } : {}),
    };
  });
}
