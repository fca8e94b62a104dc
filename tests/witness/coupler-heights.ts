/**
 * How high couplers stand on their springs, and what of two faces holds: every wheel's spring by itself, the frame let down until it
 * rests, the faces as rows of points. No formula of a lever, none of a moment.
 */
import type { Rider } from '../../engine/things/train/types.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';

const G = 9.80665;

interface Weight {
  readonly at: number;
  readonly newtons: number;
}

/** Sinks of the frame's two ends, m. */
interface Sunk {
  readonly front: number;
  readonly rear: number;
}

/** Where a wheel's spring pushes against the frame: a truck turns about its pivot, driving wheels between trucks are in the frame. */
function wheelsOf({ groups }: Vehicle): number[] {
  const places: number[] = [];
  for (const g of groups) {
    const apart = groups.length === 1 || (groups.length >= 3 && g.driven) ? g.wheelBase : 0;
    for (let axle = 0; axle < g.axles; axle++) {
      const share = g.axles === 1 ? 0 : axle / (g.axles - 1);
      for (let side = 0; side < 2; side++) places.push(g.at - apart / 2 + share * apart);
    }
  }
  return places;
}

/** What is stored in the springs less what the weights have come down, J. */
function energy(
  places: readonly number[],
  k: number,
  on: readonly Weight[],
  length: number,
  s: Sunk,
): number {
  const at = (x: number): number => s.front * (1 - x / length) + s.rear * (x / length);
  let joule = 0;
  for (const x of places) joule += (k * at(x) * at(x)) / 2;
  for (const w of on) joule -= w.newtons * at(w.at);
  return joule;
}

/** Let down and tipped by ever smaller steps for as long as that gives energy away. */
export function settle(vehicle: Vehicle, k: number, on: readonly Weight[]): Sunk {
  const places = wheelsOf(vehicle);
  const of = (s: Sunk): number => energy(places, k, on, vehicle.length, s);
  let now: Sunk = { front: 0, rear: 0 };
  let least = of(now);
  for (let step = 0.05; step > 2e-8; step /= 2) {
    for (let moved = true; moved; ) {
      moved = false;
      // Down whole, and tipped about either end or its middle.
      for (const [front, rear] of [
        [1, 1],
        [1, -1],
        [1, 0],
        [0, 1],
      ])
        for (const way of [step, -step]) {
          const next = { front: now.front + way * front, rear: now.rear + way * rear };
          const joule = of(next);
          if (joule < least - 1e-16) {
            now = next;
            least = joule;
            moved = true;
          }
        }
    }
  }
  return now;
}

export type Loading = 'empty' | 'seated' | 'full';

function aboard(vehicle: Vehicle, riders: readonly Rider[], loading: Loading, heaviest: number): Weight[] {
  const on: Weight[] = vehicle.loads.map((l) => ({ at: l.at, newtons: l.mass.value * G }));
  for (const seat of vehicle.seats) {
    if (loading === 'full') {
      on.push({ at: seat.at, newtons: (seat.most ?? heaviest) * G });
      continue;
    }
    for (const r of riders)
      if (r.vehicle === vehicle.id && r.seat === seat.id && (loading === 'seated' || r.duty !== 'rider'))
        on.push({ at: seat.at, newtons: r.mass.value * G });
  }
  return on;
}

/** Of an end under one loading, on stiff and on soft springs, m above the rail. */
export function heightsOf(
  vehicle: Vehicle,
  end: 'front' | 'rear',
  riders: readonly Rider[],
  loading: Loading,
): number[] {
  const stated = vehicle[end].height ?? Number.NaN;
  const springs = vehicle.suspension?.wheelStiffness;
  if (!springs) return [stated];
  const heaviest = riders.reduce((most, r) => Math.max(most, r.mass.high), 0);
  const on = aboard(vehicle, riders, loading, heaviest);
  return [springs.low, springs.high].map((k) => stated - settle(vehicle, k, on)[end]);
}

/** Between two points of a face, m. */
const FINE = 0.00002;

/** How much of the one face has the other before it, m; below nothing: so far they miss each other. */
export function heldBy(a: number, faceA: number, b: number, faceB: number): number {
  let held = 0;
  const [low, high] = [b - faceB / 2, b + faceB / 2];
  for (let z = a - faceA / 2 + FINE / 2; z < a + faceA / 2; z += FINE)
    if (z >= low && z <= high) held += FINE;
  if (held > 0) return held;
  return -Math.max(low - (a + faceA / 2), a - faceA / 2 - high);
}

/** Least of the faces that holds, m, where each vehicle is in one of its loadings. */
export function leastHeld(
  [ahead, behind]: readonly [Vehicle, Vehicle],
  riders: readonly Rider[],
  loadings: readonly (readonly [Loading, Loading])[],
): number {
  let least = Infinity;
  for (const [of, next] of loadings)
    for (const a of heightsOf(ahead, 'rear', riders, of))
      for (const b of heightsOf(behind, 'front', riders, next))
        least = Math.min(least, heldBy(a, ahead.rear.face ?? 0, b, behind.front.face ?? 0));
  return least;
}
