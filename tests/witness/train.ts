/**
 * The train laid out by the witness: every vehicle's masses with people and goods, the load on each of its
 * axle groups, and every brake that answers whoever is asked for.
 */

import type { Quantity } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Train } from '../../engine/things/train/types.ts';
import type { BrakeGear, Vehicle } from '../../engine/things/vehicle/types.ts';

/** Standard gravity, m/s² (CGPM 1901). */
export const G = 9.80665;

export interface Item {
  readonly mass: Quantity;
  readonly at: number;
  readonly across: number;
  /** m above rail; of a person, the seat. */
  readonly height: number;
  readonly person?: 'adult' | 'youth' | 'child';
}

export interface Car {
  readonly vehicle: Vehicle;
  /** Front end behind the train's head, m. */
  readonly front: number;
  readonly items: readonly Item[];
}

export function carsOf({ train, riders }: Outing): Car[] {
  let front = 0;
  return train.vehicles.map((vehicle) => {
    const items: Item[] = vehicle.loads.map((l) => ({ ...l }));
    for (const rider of riders) {
      const seat = rider.vehicle === vehicle.id ? vehicle.seats.find((s) => s.id === rider.seat) : undefined;
      if (!seat) continue;
      const { at, across, height } = seat;
      items.push({ mass: rider.mass, at, across, height, person: rider.ageGroup });
    }
    const car: Car = { vehicle, front, items };
    front += vehicle.length;
    return car;
  });
}

/**
 * Mass borne by each axle group, kg. One bears all; two by moments about each other; where the file shares the
 * tare by hand it is shared so, and every further mass by the two groups around it.
 */
export function borne({ vehicle, items }: Car, tare: number, masses: ArrayLike<number>): number[] {
  const { groups } = vehicle;
  const out = groups.map(() => 0);
  const put = (mass: number, at: number): void => {
    if (groups.length === 1) {
      out[0] += mass;
      return;
    }
    let rear = 1;
    while (rear < groups.length - 1 && groups[rear].at < at) rear++;
    const [a, b] = [groups[rear - 1].at, groups[rear].at];
    out[rear] += (mass * (at - a)) / (b - a);
    out[rear - 1] += (mass * (b - at)) / (b - a);
  };
  const shared = groups.some((g) => g.tareShare !== undefined);
  if (shared || groups.length > 2) {
    const open = groups.filter((g) => g.tareShare === undefined).length;
    const rest = 1 - groups.reduce((sum, g) => sum + (g.tareShare ?? 0), 0);
    groups.forEach((g, i) => {
      out[i] += tare * (g.tareShare ?? rest / open);
    });
  } else put(tare, vehicle.centreAt ?? vehicle.length / 2);
  items.forEach((item, i) => put(masses[i], item.at));
  return out;
}

/** Kinds worked through a pipe or cable along the train. */
const alongTheTrain: readonly BrakeGear['kind'][] = [
  'straight-air',
  'automatic-air',
  'simple-vacuum',
  'automatic-vacuum',
  'electric',
];

export interface Brake {
  readonly car: number;
  readonly gear: BrakeGear;
  /** It came on by itself: nobody eases it. */
  readonly alone?: boolean;
  /** Not the driver in front but one farther back puts it on, at a whistle. */
  readonly whistled?: boolean;
}

const supplies = (v: Vehicle): readonly BrakeGear['kind'][] =>
  v.supplies ?? (v.role === 'engine' ? v.brakes.map((b) => b.kind) : []);

const passesOn = (v: Vehicle, kind: BrakeGear['kind']): boolean =>
  v.brakes.some((b) => b.kind === kind) ||
  v.throughPipe?.includes(kind) === true ||
  v.supplies?.includes(kind) === true;

/** How far from each supplier of a kind the pipe is whole: walked outward, joint by joint. @param works those that somebody works */
function reached(
  { vehicles, pipeBrokenAfter }: Train,
  kind: BrakeGear['kind'],
  works: (car: number) => boolean = () => true,
): Set<number> {
  const out = new Set<number>();
  vehicles.forEach((v, from) => {
    if (!supplies(v).includes(kind) || !works(from)) return;
    for (const way of [1, -1]) {
      for (let i = from; i >= 0 && i < vehicles.length; i += way) {
        out.add(i);
        if (i !== from && !passesOn(vehicles[i], kind)) break;
        if (pipeBrokenAfter.includes(way > 0 ? i : i - 1)) break;
      }
    }
  });
  return out;
}

/** Whether a driver rides there; where nobody is named, on the first engine. */
function driven({ train, riders }: Outing, car: number): boolean {
  const aboard = (i: number): boolean =>
    riders.some((r) => r.duty === 'driver' && r.vehicle === train.vehicles[i].id);
  return train.vehicles.some((_, i) => aboard(i))
    ? aboard(car)
    : car ===
        Math.max(
          0,
          train.vehicles.findIndex((v) => v.role === 'engine'),
        );
}

/** Brakes that a driver's own hand puts on: by arm only where one rides. */
export function answering(outing: Outing): Brake[] {
  const { train } = outing;
  const inFront = train.vehicles.findIndex((_, car) => driven(outing, car));
  const reach = new Map(alongTheTrain.map((kind) => [kind, pipesOf(outing, kind, inFront)]));
  return train.vehicles.flatMap((vehicle, car) =>
    vehicle.brakes.flatMap((gear): Brake[] => {
      if (gear.workedBy !== 'driver') return [];
      const pipes = reach.get(gear.kind);
      if (pipes) return pipes.all.has(car) ? [{ car, gear, whistled: !pipes.front.has(car) }] : [];
      if (gear.kind === 'surge') return enginesBrakeAhead(train, car) ? [{ car, gear }] : [];
      return driven(outing, car) ? [{ car, gear, whistled: car !== inFront }] : [];
    }),
  );
}

/** How far the pipe reaches from every engine that some driver works, and from that of the driver in front; from all where none. */
function pipesOf(
  outing: Outing,
  kind: BrakeGear['kind'],
  inFront: number,
): { readonly all: Set<number>; readonly front: Set<number> } {
  const { train } = outing;
  const manned = train.vehicles.some((v, car) => supplies(v).includes(kind) && driven(outing, car));
  if (!manned) return { all: reached(train, kind), front: reached(train, kind) };
  return {
    all: reached(train, kind, (car) => driven(outing, car)),
    front: reached(train, kind, (car) => car === inFront),
  };
}

const enginesBrakeAhead = ({ vehicles }: Train, car: number): boolean =>
  vehicles
    .slice(0, car)
    .some(
      (v) => (v.role === 'engine' || v.role === 'tender') && v.brakes.some((b) => b.workedBy === 'driver'),
    );

/**
 * Brakes left on a parted tail whose hoses are torn: the automatic ones come on by themselves, electric ones
 * as wired, a guard's with a guard on it, the driver's own with the driver on it; all else is lost. `acts`:
 * a person must act first.
 */
export interface Left extends Brake {
  readonly acts: boolean;
}

const crossed = ({ vehicles, pipeBrokenAfter }: Train, gap: number, kind: BrakeGear['kind']): boolean =>
  !pipeBrokenAfter.includes(gap) && passesOn(vehicles[gap], kind) && passesOn(vehicles[gap + 1], kind);

export function leftOnTail(outing: Outing, first: number): Left[] {
  const { train, riders } = outing;
  const rides = (duty: 'driver'): boolean =>
    riders.some((r) => r.duty === duty && train.vehicles.findIndex((v) => v.id === r.vehicle) >= first);
  const named = riders.some((r) => r.duty === 'driver' && train.vehicles.some((v) => v.id === r.vehicle));
  const engine = Math.max(
    0,
    train.vehicles.findIndex((v) => v.role === 'engine'),
  );
  const driver = named ? rides('driver') : engine >= first;
  const guardAt = (car: number): boolean =>
    riders.some((r) => r.duty === 'guard' && r.vehicle === train.vehicles[car].id);
  const reach = new Map(alongTheTrain.map((kind) => [kind, reached(train, kind)]));
  return train.vehicles.flatMap((vehicle, car) =>
    vehicle.brakes.flatMap((gear): Left[] => {
      // Nobody may rely on a rider.
      if (car < first || gear.workedBy === 'rider') return [];
      const along = reach.get(gear.kind);
      // What was never charged does not come on.
      if (gear.workedBy === 'driver' && along && !along.has(car)) return [];
      // Where no pipe crosses the gap none is torn: it stays in the hand of a driver who rides there.
      if (gear.workedBy === 'driver' && along && !crossed(train, first - 1, gear.kind)) {
        return driver ? [{ car, gear, acts: true }] : [];
      }
      if (gear.kind === 'automatic-air' || gear.kind === 'automatic-vacuum') {
        return [{ car, gear, acts: false }];
      }
      if (gear.kind === 'electric') {
        return gear.onSupplyLoss === 'applies' ? [{ car, gear, acts: false }] : [];
      }
      if (along || gear.kind === 'surge') return [];
      // By arm: only where whoever works it rides.
      const there =
        gear.workedBy === 'driver'
          ? driver && driven(outing, car)
          : gear.workedBy === 'guard' && guardAt(car);
      return there ? [{ car, gear, acts: true }] : [];
    }),
  );
}
