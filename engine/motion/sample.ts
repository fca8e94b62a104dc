/**
 * Many stops, each with its inputs drawn from their spreads: the percentiles behind the cautious figure.
 *
 * Every uncertain input is drawn by itself from the triangle between its bounds (engine/base/spread);
 * all brakes are strong or weak together, which spreads the total more than independent brakes would.
 * Same seed, same answer.
 */
import { percentile, seeded, triangular, upperRank } from '../base/spread.ts';
import type { StopKit } from './kit.ts';
import { emptyModel, layScenario, modelOf } from './model.ts';
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
    layScenario(model, kit, scenario, false);
    out[i] = stopDistance(model, s0, v0);
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
 * the given places and speeds is taken. A place where the train does not stop even likely tells no share; where
 * none does, the bounds themselves are the cautious figure.
 */
export function cautiousShare(
  kit: StopKit,
  cases: readonly { readonly at: number; readonly speed: number }[],
  n: number,
  seed: number = SEED,
): number {
  let share = 0;
  let told = false;
  for (const { at, speed } of cases) {
    const distance = (x: number): number => stopDistance(modelOf(kit, unsafeBy(x)), at, speed);
    if (distance(0) === Infinity) continue;
    told = true;
    const target = summarise(sampleStops(kit, at, speed, n, seed)).p99Upper;
    if (distance(share) >= target) continue;
    let [low, high] = [share, 1];
    for (let i = 0; i < 12; i++) {
      const middle = (low + high) / 2;
      if (distance(middle) < target) low = middle;
      else high = middle;
    }
    share = high;
  }
  return told ? share : 1;
}
