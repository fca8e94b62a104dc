/**
 * Surge brakes where grade or curve under the train are uneven, as over a crest: with its front on a steeper fall than its rear, or
 * its rear in a curve that its front has left, the rear presses less on what is ahead, and its brakes give less. What they lose pulls
 * the train on like so much more of a fall.
 *
 *   w_j = W_j − (m_j/M)·ΣW        d_j = w_j + m_j·X/M + (1 − λ_{j+1})·d_{j+1}        X = Σ λ_j·d_j
 *
 * W_j what grade and curve under vehicle j hold it back with (N, on a fall below nothing), m mass (kg), M of the train; d_j what it presses
 * less with than on an even grade; λ = γ/(1 + γ) the share of a push that its brake takes up, γ = φ·η·i as in `hand-and-push.ts`; X what
 * all lose together (N), which slows the train less and so presses less again. The likely φ and η at 6 mph, at which pushes are settled.
 * Between nothing, for nobody relies on a front that climbs, and all that these brakes give. From the decision on, not only from when
 * the brakes are on: a stop is not shorter by it. Source: the same balance of every vehicle as in `push.ts`.
 */
import { type BrakedGroup, frictionAt } from '../things/brake/force.ts';
import { buildPotential, type Potential } from '../things/line/potential.ts';
import type { Line } from '../things/line/types.ts';
import type { LoadedTrain } from '../things/train/loaded.ts';
import { PUSHED_AT } from './push.ts';
import { SPEED_STEP } from './stop-inputs.ts';

/**
 * The same where nothing is pushed.
 *
 * @param curveConstant that the potential was built with, m
 */
export function pressedLess(
  potential: Potential,
  line: Line,
  loaded: LoadedTrain,
  groups: readonly BrakedGroup[],
  curveConstant: number,
): Potential {
  const taken = takenUp(loaded, groups);
  if (taken.all === 0) return potential;
  const { from, step, count } = potential;
  const { vehicles, mass } = loaded;
  const to = from + (count - 1) * step;
  const held = vehicles.map(
    ({ behind, vehicle: { length }, mass: own }) =>
      buildPotential(line, [{ behind, length, mass: own }], from, to, step, curveConstant).slope,
  );
  const shares = vehicles.map((v) => v.mass / mass);
  /** What is lost where each vehicle by itself presses less by so much. */
  const lost = (less: (j: number) => number): number => {
    let [behind, all] = [0, 0];
    for (let j = vehicles.length - 1; j >= 0; j--) {
      const d = less(j) + behind;
      all += taken.by[j] * d;
      behind = (1 - taken.by[j]) * d;
    }
    return all;
  };
  const again = lost((j) => shares[j]);
  const W = new Float64Array(count);
  const slope = new Float64Array(count);
  let [run, last] = [0, 0];
  for (let k = 0; k < count; k++) {
    const grade = held.reduce((sum, of) => sum + of[k], 0);
    const all = lost((j) => held[j][k] - shares[j] * grade) / (1 - again);
    const loss = Math.min(Math.max(0, all), taken.all);
    if (k > 0) run += (step * (loss + last)) / 2;
    last = loss;
    W[k] = potential.W[k] - run;
    slope[k] = potential.slope[k] - loss;
  }
  const bound = (of: 'min' | 'max'): number => slope.reduce((a, b) => Math[of](a, b));
  return { from, step, count, W, slope, leastSlope: bound('min'), mostSlope: bound('max') };
}

/** By vehicle the share of a push that its brake takes up, and what all of these give, N. */
function takenUp(
  { vehicles }: LoadedTrain,
  groups: readonly BrakedGroup[],
): { readonly by: readonly number[]; readonly all: number } {
  const first = vehicles[0]?.index ?? 0;
  const by = vehicles.map(() => 0);
  let all = 0;
  for (const { gear, vehicle, block, friction } of groups) {
    const { surge } = gear;
    if (!gear.pushed || !surge) continue;
    const phi = friction ? frictionAt(friction, PUSHED_AT * SPEED_STEP, 0) : 1;
    const gain = phi * surge.efficiency.value * surge.leverRatio;
    by[vehicle - first] = gain / (1 + gain);
    all += block.value * phi;
  }
  return { by, all };
}
