/**
 * How far the end of a vehicle sinks on its springs: as people sit, without riders, with every seat taken.
 *
 * The frame is rigid and stands on equal springs, one over each wheel:
 *
 *   s(x) = F/(n·k) + M·(x − x̄)/(k·Σ(xᵢ − x̄)²);   x̄ = Σxᵢ/n;   F = Σm·g;   M = Σm·g·(x − x̄)
 *
 * xᵢ where each of the n springs bears on the frame, x̄ their middle, m; k stiffness of one, N/m; F and M of all that is aboard beyond
 * the tare, N and N·m. Heights are measured empty. Range: springs that neither lift off nor go solid. Source: common engineering
 * statics (of two groups the lever rule).
 */
import { GRAVITY } from '../../base/constants.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';

/** On stiff and on soft springs, m; nothing sinks without known springs, and `unknown` says so of what carries riders. */
export interface Sinks {
  readonly seated: readonly number[];
  readonly empty: readonly number[];
  readonly full: readonly number[];
  readonly unknown: boolean;
}

interface At {
  readonly mass: number;
  readonly at: number;
}

/** @param heaviest whoever may sit on a seat of which nothing is stated, kg */
export const sinksOf = (loaded: LoadedVehicle, end: 'front' | 'rear', heaviest: number): Sinks =>
  sinksAt(loaded, end === 'front' ? 0 : loaded.vehicle.length, heaviest);

/** The same of any point of the frame. @param along from its front end, m */
export function sinksAt({ vehicle, riders }: LoadedVehicle, along: number, heaviest: number): Sinks {
  const stiffness = vehicle.suspension?.wheelStiffness;
  if (!stiffness)
    return {
      seated: [0],
      empty: [0],
      full: [0],
      unknown: riders.some((r) => r.rider.duty === 'rider'),
    };
  const things: At[] = vehicle.loads.map((l) => ({ mass: l.mass.value, at: l.at }));
  const people = (duty: boolean): At[] =>
    riders
      .filter((r) => !duty || r.rider.duty !== 'rider')
      .map(({ rider, seat }) => ({ mass: rider.mass.value, at: seat.at }));
  const under = (aboard: readonly At[]): number[] => {
    const force = forceAt(vehicle, along, [...things, ...aboard]);
    return [force / stiffness.low, force / stiffness.high];
  };
  return {
    seated: under(people(false)),
    empty: under(people(true)),
    full: under(vehicle.seats.map((s) => ({ mass: s.most ?? heaviest, at: s.at }))),
    unknown: false,
  };
}

/** On stiff and on soft springs, at a point of the frame, as people sit, m; nothing sinks without known springs. */
export function frameSinks({ vehicle, riders }: LoadedVehicle, along: number): number[] {
  const stiffness = vehicle.suspension?.wheelStiffness;
  if (!stiffness) return [];
  const force = forceAt(vehicle, along, [
    ...vehicle.loads.map((l) => ({ mass: l.mass.value, at: l.at })),
    ...riders.map(({ rider, seat }) => ({ mass: rider.mass.value, at: seat.at })),
  ]);
  return [force / stiffness.low, force / stiffness.high];
}

/** Sum over a spring's stiffness: load per wheel that would sink the frame there as far as it sinks, N. */
function forceAt(vehicle: LoadedVehicle['vehicle'], along: number, points: readonly At[]): number {
  const springs = springsOf(vehicle);
  const wheels = springs.reduce((sum, s) => sum + s.wheels, 0);
  const middle = springs.reduce((sum, s) => sum + s.wheels * s.at, 0) / wheels;
  const square = springs.reduce((sum, s) => sum + s.wheels * (s.at - middle) ** 2, 0);
  const force = points.reduce((sum, p) => sum + p.mass * GRAVITY, 0);
  const moment = points.reduce((sum, p) => sum + p.mass * GRAVITY * (p.at - middle), 0);
  // Nothing holds a frame on a single axle level: it sinks evenly.
  return force / wheels + (square > 0 ? (moment * (along - middle)) / square : 0);
}

interface Springs {
  readonly at: number;
  readonly wheels: number;
}

/**
 * Where the springs bear on the frame: a truck's at its pivot. Of a vehicle of one group, and of driving wheels between trucks, each
 * axle in the frame itself.
 */
function springsOf({ groups }: LoadedVehicle['vehicle']): Springs[] {
  return groups.flatMap(({ at, axles, wheelBase, driven }): Springs[] => {
    const inFrame = groups.length === 1 || (groups.length > 2 && driven);
    if (!inFrame || axles < 2) return [{ at, wheels: 2 * axles }];
    return Array.from({ length: axles }, (_, i) => ({
      at: at + wheelBase * (i / (axles - 1) - 0.5),
      wheels: 2,
    }));
  });
}
