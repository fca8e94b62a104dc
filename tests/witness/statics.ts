/**
 * How a vehicle stands on its wheels, by the balance of forces and moments in space. Every mass is a point in
 * a field of force (to the left, onto the rails, to the rear), N/kg:
 *
 *   Σ N_i = Σ m·n      Σ N_i·x_i = Σ m·(n·x + r·z)      Σ (l_i − r_i)·base/2 = Σ m·(n·y + s·z)
 *
 * n, s, r field onto the rails, to the left, to the rear; x from the front end, y to the left, z above the rail
 * (m); N_i load on group i, l_i and r_i on its left and right wheels. Two groups carry what the first two sums
 * leave no choice about; the third is shared by all axles alike (equal wheels on equal springs). On springs of
 * roll stiffness K the body leans until its masses' own moment adds: by K/(K − g·Σ m·z).
 */
import type { Quantity } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { cantAt, curvatureAt, type Ground } from './ground.ts';
import { borne, type Car, G, type Item } from './train.ts';

export interface Point {
  readonly mass: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly person: boolean;
}

export interface Standing {
  readonly car: Car;
  /** The empty vehicle first. */
  readonly points: readonly Point[];
  readonly base: number;
  /** Roll stiffness of its springs, N·m/rad; absent: none. */
  readonly stiff?: number;
}

/** Sitting height of the young ÷ a grown person's, low to high; CDC 2000 stature-for-age, from memory. */
const STATURE = {
  adult: { low: 1, value: 1, high: 1 },
  youth: { low: 0.85, value: 0.93, high: 1 },
  child: { low: 0.65, value: 0.73, high: 0.85 },
} as const;

const likely = ({ value }: Quantity): number => value;

/**
 * @param of value of a quantity: likely, or dealt anew each time that it is asked for. How people sit is asked for once
 *   for all of a vehicle
 */
export function standing(
  car: Car,
  { assumed, line }: Outing,
  of: (q: Quantity) => number = likely,
): Standing | undefined {
  const { vehicle, items } = car;
  if (!vehicle.centreHeight) return undefined;
  const sits = of(assumed.riderCentre);
  const pointOf = ({ mass, across: y, at: x, height, person }: Item): Point =>
    person
      ? { mass: of(mass), x, y, z: height + sits * of({ ...STATURE[person], how: 'assumed' }), person: true }
      : { mass: of(mass), x, y, z: height, person: false };
  const tare = {
    mass: of(vehicle.tare),
    x: vehicle.centreAt ?? vehicle.length / 2,
    y: 0,
    z: of(vehicle.centreHeight),
    person: false,
  };
  const stiff = vehicle.suspension?.rollStiffness;
  const points = [tare, ...items.map(pointOf)];
  return { car, points, base: line.contactWidth, ...(stiff ? { stiff: of(stiff) } : {}) };
}

export interface Field {
  readonly left: number;
  readonly onto: number;
  readonly rear: number;
}

export interface GroupLoad {
  /** N, all left and all right wheels of the group. */
  readonly left: number;
  readonly right: number;
}

/** @param lean m to the left of every person */
export function loadsIn({ car, points, base, stiff }: Standing, field: Field, lean = 0): GroupLoad[] {
  const { groups } = car.vehicle;
  const [tare, ...items] = points;
  const sum = (of: (p: Point) => number): number => points.reduce((total, p) => total + of(p), 0);
  const axles = groups.reduce((n, g) => n + g.axles, 0);
  const first = groups[0];
  const last = groups[groups.length - 1];
  let along: number[];
  if (groups.length === 2 && groups.every((g) => g.tareShare === undefined)) {
    const weight = sum((p) => p.mass * field.onto);
    const moment = sum((p) => p.mass * (field.onto * (p.x - first.at) + field.rear * p.z));
    const rear = moment / (last.at - first.at);
    along = [weight - rear, rear];
  } else {
    const couple = groups.length > 1 ? (field.rear * sum((p) => p.mass * p.z)) / (last.at - first.at) : 0;
    const kept = borne(
      car,
      tare.mass,
      items.map((p) => p.mass),
    );
    along = kept.map(
      (m, i) => m * field.onto + (i === groups.length - 1 ? couple : 0) - (i === 0 ? couple : 0),
    );
  }
  const high = sum((p) => p.mass * p.z);
  const softer =
    stiff === undefined ? 1 : stiff > G * high ? stiff / (stiff - G * high) : Number.POSITIVE_INFINITY;
  const roll = softer * sum((p) => p.mass * (field.onto * (p.y + (p.person ? lean : 0)) + field.left * p.z));
  return groups.map((g, i) => {
    const more = (roll / base) * (g.axles / axles);
    return { left: along[i] / 2 + more, right: along[i] / 2 - more };
  });
}

/** Least wheel load ÷ the same wheel's, standing level and upright on even wheels. */
export function leastShare(body: Standing, field: Field, lean = 0): number {
  const level = loadsIn(body, { left: 0, onto: G, rear: 0 });
  const now = loadsIn(body, field, lean);
  return Math.min(...now.flatMap((n, i) => [n.left / level[i].left, n.right / level[i].right]));
}

/** Field felt at a speed in a curve (1/m, left positive) on cant (m, right rail high) of a track so wide, m. */
export function fieldIn(speed: number, curvature: number, cant: number, width: number): Field {
  const sin = cant / width;
  const cos = Math.sqrt(1 - sin * sin);
  const outward = speed * speed * curvature;
  return { left: G * sin - outward * cos, onto: G * cos + outward * sin, rear: 0 };
}

/** m that all people may lean to one side before the first wheel lifts, or all wheels of a side together. */
export function leanThat(lifts: 'a wheel' | 'a side', body: Standing, field: Field): number {
  const left = (lean: number): number => {
    const loads = loadsIn(body, field, lean);
    const sides = (['left', 'right'] as const).map((side) => loads.map((l) => l[side]));
    return lifts === 'a wheel'
      ? Math.min(...sides.flat())
      : Math.min(...sides.map((all) => all.reduce((a, b) => a + b, 0)));
  };
  const toward = (sign: number): number => {
    let [low, high] = [0, 1];
    while (left(sign * high) > 0 && high < 1e3) high *= 2;
    for (let n = 0; n < 60; n++) {
      const middle = (low + high) / 2;
      if (left(sign * middle) > 0) low = middle;
      else high = middle;
    }
    return low;
  };
  return Math.min(toward(1), toward(-1));
}

/** Curvature and cant that a vehicle feels with the train's head at x: by its groups, by the mass on each. */
export function feltBy(
  ground: Ground,
  { car, points }: Standing,
  x: number,
): { curvature: number; cant: number } {
  const [tare, ...items] = points;
  const masses = borne(
    car,
    tare.mass,
    items.map((p) => p.mass),
  );
  const total = masses.reduce((a, b) => a + b, 0);
  let [curvature, cant] = [0, 0];
  car.vehicle.groups.forEach((g, i) => {
    const there = x - car.front - g.at;
    curvature += (masses[i] / total) * curvatureAt(ground, there);
    cant += (masses[i] / total) * cantAt(ground, there);
  });
  return { curvature, cant };
}
