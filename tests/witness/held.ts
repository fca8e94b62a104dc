/**
 * A train left standing, hand by hand: what the grade under each vehicle pulls, what its own rolling resists, and what the brakes
 * that were put on hold, wheel by wheel.
 *
 *   rolls where |Σ m_i·g·grade_i| > a + Σ_w min(Σ φ(0)·B, µ·N_w)
 *
 * a rolling resistance with the grade that the survey may have missed (`hand.ts`), φ(0) friction of blocks at rest, as wet as
 * today's rail leaves them, µ·N_w what the rail holds of one axle group: wheels that are locked at rest hold that.
 */
import { type Ground, meanGrade } from './ground.ts';
import type { Hand } from './hand.ts';
import { frictionAt } from './stop.ts';
import { type Car, G } from './train.ts';

/** Grade under each vehicle with the train's head at a place. */
export const gradesAt = (ground: Ground, cars: readonly Car[], head: number): number[] =>
  cars.map(({ front, vehicle }) => meanGrade(ground, head - front - vehicle.length, head - front));

/** N that are left over to hold with; below nothing: it rolls. */
export function spare({ mass, a, grip, wheels, material, push, frictions }: Hand, grades: number[]): number {
  const onWheels = new Float64Array(grip.length);
  for (let i = 0; i < push.length; i++)
    onWheels[wheels[i]] += push[i] * (material[i] < 0 ? 1 : frictionAt(frictions[material[i]], 0));
  const held = onWheels.reduce((sum, force, w) => sum + Math.min(force, grip[w]), 0);
  const pull = grades.reduce((sum, grade, i) => sum + mass[i] * G * grade, 0);
  return held + a - Math.abs(pull);
}
