/** The fall that full brake and rolling resistance hold. */

import { brakeForce, type StopModel } from './model.ts';
import { SPEED_STEP } from './stop-inputs.ts';

/** Full brake on the model's own rail and rolling resistance at the speed up to `top` where they are least, N. */
export function leastBrake(model: StopModel, top: number): number {
  const { force, a, b, c } = model;
  const at = (v: number): number => brakeForce(force, v) + a + v * (b + v * c);
  let least = Math.min(at(0), at(top));
  for (let v = SPEED_STEP; v < top; v += SPEED_STEP) least = Math.min(least, at(v));
  return least;
}

/** Pull of the steepest even fall that it holds, as the potential has it: of the likely mass, N. */
export const leastHeld = (model: StopModel, top: number): number => leastBrake(model, top) / model.massFactor;
