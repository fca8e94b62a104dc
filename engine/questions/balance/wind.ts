/**
 * A cross wind's overturning moment. Areas come from the vehicle's own sizes and a seated person's side
 * view; a rough sum, on the unsafe side, for a wind that must be felt before it matters.
 */
import { AIR_DENSITY } from '../../base/constants.ts';
import type { AssumedValues } from '../../things/assumed.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';

/**
 * Moment about the rails, N·m:  M = ½·ρ·c·w²·Σ A·z.
 * @param speed w, m/s across the track
 */
export function windMoment(
  loaded: LoadedVehicle,
  speed: number,
  { drag, personArea, personMiddle }: AssumedValues['wind'],
): number {
  if (speed === 0) return 0;
  const { vehicle, riders } = loaded;
  const top = vehicle.envelope?.height ?? Math.max(0, ...vehicle.seats.map((s) => s.height));
  const body = vehicle.length * top * (top / 2);
  const people = riders.reduce((sum, r) => sum + personArea.value * (r.seat.height + personMiddle.value), 0);
  return 0.5 * AIR_DENSITY * drag.value * speed * speed * (body + people);
}
