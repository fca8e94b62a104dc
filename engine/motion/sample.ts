/**
 * Many stops, each with its inputs drawn together from their spreads: the odds behind the cautious figure.
 *
 * What the whole train shares is drawn once (adhesion, rail, reaction, timing, wetness, friction of the blocks, grade, a
 * bad spot), what a vehicle has for itself once for each (force of its brake, rolling resistance, mass), every one from
 * the triangle between its bounds (engine/base/spread). Same seed, same answer.
 */
import { percentile, pick, seeded, triangular } from '../base/spread.ts';
import type { StopKit } from './kit.ts';
import { emptyModel, layScenario, modelOf, type StopModel } from './model.ts';
import { likely, type Own, type Scenario, unsafeBy } from './scenario.ts';
import { stopDistance } from './stop.ts';

export const SAMPLES = 10_000;
export const SEED = 20_260_401;
/** What can hurt: one stop in a hundred may be longer, given what was stated. */
export const ODDS = 0.99;

export interface Sampled {
  readonly n: number;
  readonly p50: number;
  readonly p90: number;
  readonly p99: number;
  /** Share that does not stop within the potential's grid. */
  readonly neverStops: number;
}

export interface Case {
  readonly at: number;
  readonly speed: number;
}

const shared = [
  'adhesion',
  'friction',
  'reaction',
  'timing',
  'easing',
  'notice',
  'skid',
  'wet',
  'grade',
  'spotFactor',
] as const;

/** Draws the inputs of one stop after the other, into the same places. */
export class Draws {
  readonly scenario: Scenario = { ...likely };
  readonly own: Own;
  readonly #kit: StopKit;
  readonly #draw: () => number;

  constructor(kit: StopKit, seed: number) {
    const vehicles = kit.vehicleMass.length;
    this.#kit = kit;
    this.#draw = seeded(seed);
    this.own = {
      brake: new Float64Array(vehicles),
      resistance: new Float64Array(vehicles),
      mass: new Float64Array(vehicles),
    };
  }

  next(): void {
    const { scenario, own } = this;
    const draw = this.#draw;
    const { badSpot } = this.#kit;
    for (const key of shared) scenario[key] = triangular(draw());
    const chance = pick(badSpot.chance, triangular(draw()));
    const meets = draw() < chance;
    const length = pick(badSpot.length, triangular(draw()));
    scenario.spot = meets ? length : 0;
    for (let j = 0; j < own.mass.length; j++) {
      own.brake[j] = triangular(draw());
      own.resistance[j] = triangular(draw());
      own.mass[j] = triangular(draw());
    }
    this.#means();
  }

  /** The train's mean of what is each vehicle's own, weighted by what it weighs in the sum. */
  #means(): void {
    const { scenario, own } = this;
    const { vehicleMass, rollingValue, blockValue, vehicle, groups, mass } = this.#kit;
    let [brake, blocks, rolling, resists, heavy] = [0, 0, 0, 0, 0];
    for (let g = 0; g < groups; g++) {
      brake += blockValue[g] * own.brake[vehicle[g]];
      blocks += blockValue[g];
    }
    for (let j = 0; j < vehicleMass.length; j++) {
      resists += rollingValue[j] * own.resistance[j];
      rolling += rollingValue[j];
      heavy += vehicleMass[j] * own.mass[j];
    }
    scenario.brake = blocks > 0 ? brake / blocks : 0;
    scenario.resistance = rolling > 0 ? resists / rolling : 0;
    scenario.mass = heavy / mass;
  }

  lay(model: StopModel): void {
    layScenario(model, this.#kit, this.scenario, false, this.own);
  }
}

/** Distances of n sampled stops, in the order drawn; Infinity where a train does not stop. */
export function sampleStops(kit: StopKit, s0: number, v0: number, n: number, seed: number): Float64Array {
  const draws = new Draws(kit, seed);
  const model = emptyModel(kit);
  return new Float64Array(n).map(() => {
    draws.next();
    draws.lay(model);
    return stopDistance(model, s0, v0);
  });
}

export function summarise(distances: Float64Array): Sampled {
  const sorted = Float64Array.from(distances).sort();
  const n = sorted.length;
  const stopped = sorted.indexOf(Infinity);
  return {
    n,
    p50: percentile(sorted, 0.5),
    p90: percentile(sorted, 0.9),
    p99: percentile(sorted, ODDS),
    neverStops: stopped < 0 ? 0 : (n - stopped) / n,
  };
}

/** Aimed at a little beyond the odds, for a thousand draws tell a percentile only so well. */
const AIMED_AT = 0.993;
/** Which draws make the direction: those about as bad as one in a hundred. */
const TAIL_FROM = 0.975;

const keys = Object.keys(likely) as (keyof Scenario)[];

/** A scenario with all its positions moved from the likely ones along a direction, none beyond its bound. */
export function along(direction: Scenario, way: number): Scenario {
  const moved = { ...likely };
  for (const key of keys) {
    const position = way * direction[key];
    moved[key] = key === 'spot' ? position : Math.max(-1, Math.min(1, position));
  }
  return moved;
}

/**
 * The one scenario that stands for the cautious stop everywhere: what the draws that are about as bad as one in a
 * hundred have in common, moved along until the stop is the 99th of a hundred at each of the given places.
 */
export function cautiousScenario(
  kit: StopKit,
  cases: readonly Case[],
  n: number,
  seed: number = SEED,
): Scenario {
  const draws = new Draws(kit, seed);
  const model = emptyModel(kit);
  const distances = cases.map(() => new Float64Array(n));
  const drawn: Scenario[] = [];
  for (let i = 0; i < n; i++) {
    draws.next();
    draws.lay(model);
    drawn.push({ ...draws.scenario });
    cases.forEach(({ at, speed }, c) => {
      distances[c][i] = stopDistance(model, at, speed);
    });
  }
  // Where not even a likely stop ends, nothing less than all bounds at once is careful enough.
  if (cases.every(({ at, speed }) => stopDistance(modelOf(kit, likely), at, speed) === Infinity))
    return unsafeBy(1);
  const direction = directionOf(distances, drawn);
  let way = 0;
  cases.forEach(({ at, speed }, c) => {
    const target = percentile(Float64Array.from(distances[c]).sort(), AIMED_AT);
    const distance = (x: number): number => stopDistance(modelOf(kit, along(direction, x)), at, speed);
    if (distance(way) >= target) return;
    let [low, high] = [way, FARTHEST];
    for (let i = 0; i < 14; i++) {
      const middle = (low + high) / 2;
      if (distance(middle) < target) low = middle;
      else high = middle;
    }
    way = high;
  });
  return along(direction, way);
}

/** The direction is that of the mean of the worst draws: none of its positions is moved farther than so many times. */
const FARTHEST = 4;

function directionOf(distances: readonly Float64Array[], drawn: readonly Scenario[]): Scenario {
  const n = drawn.length;
  const mean = { ...likely };
  let count = 0;
  for (const of of distances) {
    const order = Array.from({ length: n }, (_, i) => i).sort((a, b) => of[a] - of[b] || a - b);
    for (const i of order.slice(Math.floor(n * TAIL_FROM))) {
      for (const key of keys) mean[key] += drawn[i][key];
      count++;
    }
  }
  for (const key of keys) mean[key] = key === 'spot' ? mean[key] / count : Math.min(0, mean[key] / count);
  return mean;
}
