/**
 * The scenarios that stand for the cautious stop: each the likeliest one that is no milder than one draw in a hundred by
 * any reference of its kind. A stop is told by whichever makes it longest.
 *
 *   least |x|² with f(x) ≥ the 99th of a hundred drawn, for each reference f      x = Σ w·d, w ≥ 0
 *
 * d mean of the draws that are about as bad as one in a hundred by a reference: what they have in common, and no more
 * of anything else. One scenario for all would be late on the level and unlucky on a fall that is just held, both in the same
 * stop: over a brow between the two that is far beyond one in a hundred.
 */
import { percentile } from '../base/spread.ts';
import { emptyModel, writeScenario } from './model.ts';
import { type Drawn, type Reference, referencesOf, referencesOfPart, type Speeds } from './references.ts';
import { Draws, SEED } from './sample.ts';
import { type Caution, likely, type Scenario, unsafeBy } from './scenario.ts';
import type { StopInputs } from './stop-inputs.ts';

interface Demand {
  readonly of: Reference;
  readonly target: number;
  readonly direction: Scenario;
}

/**
 * Aimed so far beyond the odds that what is drawn is surely no milder: of a thousand draws by which one in 77 (1.3 %) is worse than
 * a stop, no more than five are one time in ninety at most, no more than seven one time in nineteen (Poisson), and even draws
 * are surer than chance. Less on a fall that is just held, where a little more odds is a far longer stop; of a part, which
 * has but one scenario for all, one in a hundred of fewer draws.
 */
const AIMED_AT = { nearBalance: 0.993, even: 0.995, part: 0.99 };
/** Which draws make a direction: those about as bad as one in a hundred. */
const TAIL_FROM = 0.975;
/** No position is moved farther along one direction than so many times its greatest. */
const FARTHEST = 4;
/** Rounds until the weights have settled: of the whole train, and of a part, which has but few references. */
const [ROUNDS, ROUNDS_OF_PART] = [4, 2];
const HALVINGS = 12;

const keys = Object.keys(likely) as (keyof Scenario)[];

/**
 * First that of a fall which is just held, then that of even ground, and of the places where another rail is met.
 *
 * @param length of the line, m
 * @param n draws
 */
export function cautiousScenarios(
  inputs: StopInputs,
  speeds: Speeds,
  length: number,
  n: number,
  seed: number = SEED,
): Caution {
  const drawn = { n, seed };
  const { nearBalance, even, elsewhere } = referencesOf(inputs, speeds, length, drawn);
  const demands = demandsOf(
    inputs,
    [...aimed(nearBalance, AIMED_AT.nearBalance), ...aimed([...even, ...elsewhere], AIMED_AT.even)],
    drawn,
  );
  const [evenFrom, elsewhereFrom] = [nearBalance.length, nearBalance.length + even.length];
  return [
    likeliest(inputs, demands.slice(0, evenFrom)),
    likeliest(inputs, demands.slice(evenFrom, elsewhereFrom)),
    ...(elsewhere.length > 0 ? [likeliest(inputs, demands.slice(elsewhereFrom))] : []),
  ];
}

/** How a part of a train is set its caution. */
export interface Careful {
  /** m/s */
  readonly run: number;
  /** 0: its bounds themselves. */
  readonly draws: number;
}

/**
 * That of some vehicles by themselves, on whatever ground: what makes a whole train late or slippery says nothing of a tail
 * with other brakes.
 */
export function cautionOfPart(inputs: StopInputs, { run, draws }: Careful, seed: number = SEED): Scenario {
  if (draws === 0) return unsafeBy(1);
  return likeliest(
    inputs,
    demandsOf(inputs, aimed(referencesOfPart(inputs, run), AIMED_AT.part), { n: draws, seed }),
    ROUNDS_OF_PART,
  );
}

interface Aimed {
  readonly of: Reference;
  readonly aim: number;
}

const aimed = (references: readonly Reference[], aim: number): Aimed[] =>
  references.map((of) => ({ of, aim }));

function demandsOf(inputs: StopInputs, references: readonly Aimed[], { n, seed }: Drawn): Demand[] {
  const draws = new Draws(inputs, seed, n);
  const model = emptyModel(inputs);
  const found = references.map(() => new Float64Array(n));
  const drawn: Scenario[] = [];
  for (let i = 0; i < n; i++) {
    draws.next();
    draws.lay(model);
    drawn.push({ ...draws.scenario });
    references.forEach(({ of }, r) => {
      found[r][i] = of(model);
    });
  }
  return references.map(({ of, aim }, r) => {
    const sorted = Float64Array.from(found[r]).sort();
    const tail = percentile(sorted, TAIL_FROM);
    return {
      of,
      target: percentile(sorted, aim),
      direction: inCommon(drawn.filter((_, i) => found[r][i] >= tail)),
    };
  });
}

/** Each weight in turn no greater than its own reference needs beside the others; at last none is left short. */
function likeliest(inputs: StopInputs, demands: readonly Demand[], rounds = ROUNDS): Scenario {
  const model = emptyModel(inputs);
  const weights = demands.map(() => 0);
  const meets = (i: number, weight: number): boolean => {
    weights[i] = weight;
    writeScenario(model, inputs, moved(inputs, demands, weights), true);
    return demands[i].of(model) >= demands[i].target;
  };
  const settle = (i: number, least: number): void => {
    if (meets(i, least)) return;
    let [low, high] = [least, FARTHEST];
    for (let h = 0; h < HALVINGS; h++) {
      const middle = (low + high) / 2;
      if (meets(i, middle)) high = middle;
      else low = middle;
    }
    weights[i] = high;
  };
  for (let round = 0; round < rounds; round++) demands.forEach((_, i) => settle(i, 0));
  demands.forEach((_, i) => settle(i, weights[i]));
  return moved(inputs, demands, weights);
}

/** No position beyond its bound. */
function moved(inputs: StopInputs, demands: readonly Demand[], weights: readonly number[]): Scenario {
  const scenario = { ...likely };
  demands.forEach(({ direction }, i) => {
    for (const key of keys) scenario[key] += weights[i] * direction[key];
  });
  for (const key of keys) if (key !== 'spot') scenario[key] = Math.max(-1, scenario[key]);
  scenario.spot = Math.min(scenario.spot, inputs.badSpot.length.high);
  return scenario;
}

/** Mean of bad draws, its greatest position 1. */
function inCommon(bad: readonly Scenario[]): Scenario {
  const mean = { ...likely };
  let most = 0;
  for (const key of keys) {
    const position = bad.reduce((sum, scenario) => sum + scenario[key], 0) / bad.length;
    mean[key] = key === 'spot' ? position : Math.min(0, position);
    if (key !== 'spot') most = Math.max(most, -mean[key]);
  }
  if (most > 0) for (const key of keys) mean[key] /= most;
  return mean;
}
