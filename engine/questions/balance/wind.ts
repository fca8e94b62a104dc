/**
 * A cross wind's overturning moment. Areas come from the vehicle's own sizes and a seated person's side
 * view; a rough sum, on the unsafe side, for a wind that must be felt before it matters.
 */
import type { LoadedVehicle } from '../../things/train/loaded.ts';

/** Air at sea level and 15 °C, kg/m³ (US Standard Atmosphere 1976). */
const AIR_DENSITY = 1.225;
/** Drag of a bluff body across the wind (handbook figure for plates and short cylinders, from memory). */
const DRAG = 1.2;
/** Seen from the side, a seated adult, m² (common practice, no source). */
const PERSON_AREA = 0.4;
/** Middle of that area above the seat, m (common practice, no source). */
const PERSON_MIDDLE = 0.4;

/**
 * Moment about the rails, N·m:  M = ½·ρ·c·w²·Σ A·z.
 * @param speed w, m/s across the track
 */
export function windMoment(loaded: LoadedVehicle, speed: number): number {
  if (speed === 0) return 0;
  const { vehicle, riders } = loaded;
  const top = vehicle.envelope?.height ?? Math.max(0, ...vehicle.seats.map((s) => s.height));
  const body = vehicle.length * top * (top / 2);
  const people = riders.reduce((sum, r) => sum + PERSON_AREA * (r.seat.height + PERSON_MIDDLE), 0);
  return 0.5 * AIR_DENSITY * DRAG * speed * speed * (body + people);
}
