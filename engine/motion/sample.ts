/**
 * Many stops, each with its inputs drawn together from their spreads: the odds behind the cautious figure.
 *
 * What the whole train shares is drawn once (adhesion, rail, reaction, timing, wetness, friction of the blocks, grade, a
 * bad spot), evenly over all draws (engine/base/latin); what a vehicle has for itself once for each (force of its brake,
 * rolling resistance, mass); every one from the triangle between its bounds (engine/base/spread). What was measured together
 * goes together (fits.ts). Same seed, same answer.
 */
import { Latin } from '../base/latin.ts';
import { meanDrawn, percentile, pick, seeded, triangular } from '../base/spread.ts';
import { StopFits } from './fits.ts';
import { emptyModel, type StopModel, writeScenario } from './model.ts';
import { likely, type Own, type Scenario } from './scenario.ts';
import { stopDistance } from './stop.ts';
import type { StopInputs } from './stop-inputs.ts';

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
  readonly #inputs: StopInputs;
  readonly #latin: Latin;
  readonly #draw: () => number;
  /** Of meeting a bad spot: drawn or its mean, for one stop it is the same. */
  readonly #chance: number;
  readonly #fits: StopFits | undefined;

  /** @param n draws that are asked for */
  constructor(inputs: StopInputs, seed: number, n: number) {
    const vehicles = inputs.vehicleMass.length;
    this.#inputs = inputs;
    this.#latin = new Latin(seed, n);
    this.#draw = seeded(seed + 1);
    this.#chance = meanDrawn(inputs.badSpot.chance);
    this.#fits = inputs.fits && new StopFits(inputs.fits, seed);
    this.own = {
      brake: new Float64Array(vehicles),
      resistance: new Float64Array(vehicles),
      mass: new Float64Array(vehicles),
    };
  }

  next(): void {
    const { scenario, own } = this;
    const { badSpot } = this.#inputs;
    const latin = this.#latin;
    const draw = this.#draw;
    latin.next();
    for (const key of shared) scenario[key] = triangular(latin.draw());
    // Of those that meet one, how far below the chance they fell is uniform, and as even: it says how long the spot is.
    const met = latin.draw() / this.#chance;
    scenario.spot = met < 1 ? pick(badSpot.length, triangular(met)) : 0;
    for (let j = 0; j < own.mass.length; j++) {
      own.brake[j] = triangular(draw());
      own.resistance[j] = triangular(draw());
      own.mass[j] = triangular(draw());
    }
    this.#fits?.next(scenario, own);
    this.#means();
  }

  /** The train's mean of what is each vehicle's own, weighted by what it weighs in the sum. */
  #means(): void {
    const { scenario, own } = this;
    const { vehicleMass, rollingValue, blockValue, vehicle, groups, mass } = this.#inputs;
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
    writeScenario(model, this.#inputs, this.scenario, false, this.own);
  }
}

/** Distances of n sampled stops, in the order drawn; Infinity where a train does not stop. */
export function sampleStops(
  inputs: StopInputs,
  s0: number,
  v0: number,
  n: number,
  seed: number,
): Float64Array {
  const draws = new Draws(inputs, seed, n);
  const model = emptyModel(inputs);
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
