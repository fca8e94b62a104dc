/** A bad spot in a stop along the line. */
import { potentialAt } from '../things/line/potential.ts';
import { brakeForce, type StopModel, type StopTrace } from './model.ts';

/**
 * What the model's bad spot adds to a stop that was found without it, m: the work that brakes beyond its adhesion do
 * not do there.
 *
 *   Δs = ΔF/F·min(L, w·F/(F − ΔF))        ΔF = max(0, B − f·Σµ·N)
 *
 * B all brakes (N), F with resistance and fall, ΔF lost on the spot, L its length and w the way at full brake (m), f
 * adhesion on the spot ÷ beside it. Where adhesion limits all of a level stop it is `badSpotAdds`; a stop that ends on
 * the spot loses no more than its own way.
 */
export function spotAdds(model: StopModel, s0: number, v0: number, stop: StopTrace): number {
  const { distance, beforeFullBrake } = stop;
  const way = distance - beforeFullBrake;
  if (!(way > 0) || way === Infinity) return 0;
  const { potential, massFactor, a, scratch, spot, spotFactor } = model;
  const brake = brakeForce(model.force, v0 * Math.SQRT1_2);
  const lost = brake - spotFactor * scratch.grip[0];
  if (lost <= 0) return 0;
  const rise = potentialAt(potential, s0 + distance) - potentialAt(potential, s0);
  const net = brake + a + (massFactor * rise) / distance;
  if (net <= 0) return Infinity;
  return (lost / net) * (net > lost ? Math.min(spot, (way * net) / (net - lost)) : spot);
}
