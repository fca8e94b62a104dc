/**
 * The tilt test: a vehicle is tilted sideways on its rails until the first wheel lifts, and the angle tells
 * how high its centre of gravity lies.
 */

import type { Quantity } from '../../base/quantity.ts';
import { centreHeightFromTilt } from '../../things/line/curves.ts';
import { groupLoads } from '../../things/train/loaded.ts';
import { tareAlong } from '../../things/vehicle/tare.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import type { PointMass } from './body.ts';

export interface TiltTest {
  /** Angle at which the first upper wheel lifted, rad, with the doubt of its reading. */
  readonly angle: Quantity;
  /** Between rail contacts on the tilt bench, m. */
  readonly base: number;
  /** Things and people (or sand bags) on board, with their places. */
  readonly aboard: readonly PointMass[];
}

export interface TiltResult {
  /** Centre of gravity of everything on the bench, m above rail. */
  readonly centre: Quantity;
  /** Of the empty vehicle, m above rail: what its file wants. */
  readonly tareCentre: Quantity;
}

/**
 *   h = min over groups (n_i/(2·σ_i·m))·b/tan α − Y/(m·tan α)
 *
 * n_i mass on a group, σ_i its share of the axles: on a vehicle whose trucks are evenly loaded this is the
 * formula of the sums. α in (0, 90°). Undefined where the angle is not in that range.
 */
export function centreFromTilt(vehicle: Vehicle, test: TiltTest): TiltResult | undefined {
  const { angle, base, aboard } = test;
  if (!(angle.low > 0) || !(angle.high < Math.PI / 2)) return undefined;
  const tare = vehicle.tare.value;
  const mass = aboard.reduce((sum, p) => sum + p.mass, tare);
  const first = firstToLift(vehicle, aboard, mass);
  const offset = Math.abs(aboard.reduce((sum, p) => sum + p.mass * p.across, 0)) / mass;
  const height = (a: number): number => centreHeightFromTilt(a, base * first, offset);
  const centre = measured(height(angle.value), height(angle.high), height(angle.low), angle.date);
  const boardMoment = aboard.reduce((sum, p) => sum + p.mass * p.height, 0);
  const bare = (h: number): number => (h * mass - boardMoment) / tare;
  return {
    centre,
    tareCentre: measured(bare(centre.value), bare(centre.low), bare(centre.high), angle.date),
  };
}

/** Load of the group that lifts first ÷ its even share: 1 where all are evenly loaded. */
function firstToLift(vehicle: Vehicle, aboard: readonly PointMass[], mass: number): number {
  const at = tareAlong(vehicle);
  const loads = groupLoads(vehicle, vehicle.tare.value, at, aboard);
  const total = loads.reduce((sum, n) => sum + n, 0);
  const axles = vehicle.groups.reduce((sum, g) => sum + g.axles, 0);
  return mass > 0 ? Math.min(...loads.map((n, i) => n / total / (vehicle.groups[i].axles / axles))) : 1;
}

const measured = (value: number, low: number, high: number, date: string | undefined): Quantity => ({
  value,
  low,
  high,
  how: 'measured',
  source: 'tilt test',
  ...(date === undefined ? {} : { date }),
});
