/** A bad spot in a stop along the line. */
import { firstZero } from '../base/roots.ts';
import { type Potential, potentialAt } from '../things/line/potential.ts';
import { brakeForce, type StopModel, type StopTrace } from './model.ts';

/**
 * What the model's bad spot adds to a stop that was found without it, m: the work that brakes beyond its adhesion do
 * not do there is done on the ground beyond where the stop ended.
 *
 *   H·Δs + m·(W(e + Δs) − W(e)) = ΔF·min(L, w + Δs)        ΔF = max(0, B − f·Σµ·N)
 *
 * e where the stop ends without it, B all brakes and H them with resistance (N), ΔF lost on the spot, L its length and w
 * the way at full brake (m), f adhesion on the spot ÷ beside it. Where adhesion limits all of a level stop it is
 * `badSpotAdds`; a stop that ends on the spot loses no more than its own way. Infinity where nothing beyond holds it.
 * Wherever on the way the spot lies it adds the same: grade takes and gives back by height alone.
 */
export function spotAdds(model: StopModel, s0: number, v0: number, stop: StopTrace): number {
  const { distance, beforeFullBrake } = stop;
  const way = distance - beforeFullBrake;
  if (!(way > 0) || way === Infinity) return 0;
  const { potential, massFactor, a, scratch, spot, spotFactor } = model;
  const brake = brakeForce(model.force, v0 * Math.SQRT1_2);
  const lost = brake - spotFactor * scratch.grip[0];
  if (lost <= 0) return 0;
  const end = s0 + distance;
  const level = potentialAt(potential, end);
  const left = (x: number): number =>
    lost * Math.min(spot, way + x) - (brake + a) * x - massFactor * (potentialAt(potential, end + x) - level);
  return firstHeld(potential, end, left);
}

/** The first place beyond `end` where nothing is left, sought from node to node of the ground, m on from it. */
function firstHeld(potential: Potential, end: number, left: (x: number) => number): number {
  const { from, step, count } = potential;
  let before = 0;
  for (let node = Math.max(0, Math.floor((end - from) / step) + 1); node < count; node++) {
    const x = from + node * step - end;
    if (left(x) <= 0) return before + firstZero((dx) => left(before + dx), x - before);
    before = x;
  }
  return Infinity;
}
