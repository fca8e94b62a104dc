/**
 * Rolling resistance of the whole train on level straight track.
 *
 *   R(v) = a + b·v + c·v²,   a = Σ m·g·r,  b = Σ m·g·r′,  c = Σ c_i
 *
 * m mass of a vehicle (kg), r rolling resistance (N/N), r′ its speed term (N/N per m/s), c_i N/(m/s)².
 */
import { GRAVITY } from '../../base/constants.ts';
import { pick } from '../../base/spread.ts';
import type { LoadedVehicle } from './loaded.ts';

export interface ResistanceTerms {
  /** N */
  readonly a: number;
  /** N/(m/s) */
  readonly b: number;
  /** N/(m/s)² */
  readonly c: number;
}

/** @param position in the spread of each vehicle's resistance, speed term and all, −1 (low) … 1 (high) */
export function resistanceTerms(vehicles: readonly LoadedVehicle[], position: number): ResistanceTerms {
  let a = 0;
  let b = 0;
  let c = 0;
  for (const { vehicle, mass } of vehicles) {
    const weight = mass * GRAVITY;
    a += weight * pick(vehicle.resistance.rolling, position);
    b += weight * pick(vehicle.resistance.perSpeed, position);
    c += vehicle.resistance.perSpeedSquared;
  }
  return { a, b, c };
}

export const resistanceAt = ({ a, b, c }: ResistanceTerms, v: number): number => a + v * (b + v * c);
