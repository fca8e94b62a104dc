/**
 * Many stops, each with its inputs drawn from their spreads: the percentiles behind the cautious figure.
 *
 * Every uncertain input is drawn by itself from the triangle between its bounds (engine/base/spread);
 * all brakes are strong or weak together, which spreads the total more than independent brakes would.
 * Same seed, same answer.
 */
import { percentile, pick, seeded, triangular, upperRank } from '../base/spread.ts';
import { potentialAt } from '../things/line/potential.ts';
import type { StopKit } from './kit.ts';
import { brakeForce, emptyModel, layScenario, modelOf, type StopModel } from './model.ts';
import { likely, unsafeBy } from './scenario.ts';
import { stopDistance } from './stop.ts';

export const SAMPLES = 10_000;
export const SEED = 20_260_401;

export interface Sampled {
  readonly n: number;
  readonly p50: number;
  readonly p90: number;
  readonly p99: number;
  /** Upper 95 % confidence bound of the 99th percentile. */
  readonly p99Upper: number;
  /** Share that does not stop within the potential's grid. */
  readonly neverStops: number;
}

/**
 * What a bad spot adds to the stop just computed, m: the work that brakes beyond its adhesion do not do there.
 *
 *   Δs = ΔF/F·min(L, w·F/(F − ΔF))        ΔF = max(0, B − f·Σµ·N)
 *
 * B all brakes (N), F with resistance and fall, ΔF lost on the spot, L its length and w the way at full brake (m), f
 * adhesion on the spot ÷ beside it. Where adhesion limits all of a level stop it is `badSpotAdds`; a stop that ends on
 * the spot loses no more than its own way.
 */
export function spotAdds(model: StopModel, s0: number, v0: number, length: number, factor: number): number {
  const { distance, beforeFullBrake } = model.trace;
  const way = distance - beforeFullBrake;
  if (!(way > 0) || way === Infinity) return 0;
  const { potential, massFactor, a, scratch } = model;
  const brake = brakeForce(model.force, v0 * Math.SQRT1_2);
  let grip = 0;
  for (let g = 0; g < scratch.limit.length; g++) grip += scratch.limit[g];
  const lost = brake - factor * grip;
  if (lost <= 0) return 0;
  const rise = potentialAt(potential, s0 + distance) - potentialAt(potential, s0);
  const net = brake + a + (massFactor * rise) / distance;
  if (net <= 0) return Infinity;
  return (lost / net) * (net > lost ? Math.min(length, (way * net) / (net - lost)) : length);
}

/** Distances of n sampled stops, in the order drawn; Infinity where a train does not stop. */
export function sampleStops(kit: StopKit, s0: number, v0: number, n: number, seed: number): Float64Array {
  const draw = seeded(seed);
  const model = emptyModel(kit);
  const out = new Float64Array(n);
  const scenario = { ...likely };
  for (let i = 0; i < n; i++) {
    scenario.adhesion = triangular(draw());
    scenario.brake = triangular(draw());
    scenario.reaction = triangular(draw());
    scenario.timing = triangular(draw());
    scenario.resistance = triangular(draw());
    scenario.mass = triangular(draw());
    scenario.easing = triangular(draw());
    scenario.notice = triangular(draw());
    scenario.skid = triangular(draw());
    scenario.wet = triangular(draw());
    scenario.grade = triangular(draw());
    layScenario(model, kit, scenario, false);
    const distance = stopDistance(model, s0, v0);
    const chance = pick(kit.badSpot.chance, triangular(draw()));
    const meets = draw() < chance;
    const factor = pick(kit.badSpot.factor, triangular(draw()));
    const length = pick(kit.badSpot.length, triangular(draw()));
    out[i] = distance + (meets ? spotAdds(model, s0, v0, length, factor) : 0);
  }
  return out;
}

export function summarise(distances: Float64Array): Sampled {
  const sorted = Float64Array.from(distances).sort();
  const n = sorted.length;
  const stopped = sorted.indexOf(Infinity);
  return {
    n,
    p50: percentile(sorted, 0.5),
    p90: percentile(sorted, 0.9),
    p99: percentile(sorted, 0.99),
    p99Upper: sorted[upperRank(n, 0.99) - 1],
    neverStops: stopped < 0 ? 0 : (n - stopped) / n,
  };
}

/**
 * The share λ of the way to the unsafe bounds at which one stop equals the sampled 99th percentile (upper
 * bound): with it a single stop, or a whole speed map, is as cautious as 10,000 samples. The greatest over
 * the given places and speeds is taken.
 */
export function cautiousShare(
  kit: StopKit,
  cases: readonly { readonly at: number; readonly speed: number }[],
  n: number,
  seed = SEED,
): number {
  let share = 0;
  for (const { at, speed } of cases) {
    const target = summarise(sampleStops(kit, at, speed, n, seed)).p99Upper;
    const distance = (x: number): number => stopDistance(modelOf(kit, unsafeBy(x)), at, speed);
    if (distance(share) >= target) continue;
    let [low, high] = [share, 1];
    for (let i = 0; i < 12; i++) {
      const middle = (low + high) / 2;
      if (distance(middle) < target) low = middle;
      else high = middle;
    }
    share = high;
  }
  return share;
}
