/** A brake force measured at a stand falls with speed as its block's friction does. */
import { type FrictionPoint, frictionAt } from './force.ts';

/**
 * Retarding force at a speed ÷ force measured at a stand: φ(v)/φ(0), of the likely friction.
 *
 * points of φ by speed, growing · speed m/s. 1 throughout for a material of which only the standing value is
 * known: composition is made to be so; of wood, steel and bronze it is only not known. Source: as the table's.
 */
export function speedShare(points: readonly FrictionPoint[], speed: number): number {
  return frictionAt(points, speed, 0) / frictionAt(points, 0, 0);
}
