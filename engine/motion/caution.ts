/**
 * The one scenario that stands for the cautious stop everywhere: the likeliest one that is no milder than one draw in a
 * hundred wherever caution is set.
 *
 *   least |x|² with f(x) ≥ the 99th of a hundred drawn, for each reference f      x = Σ w·d, w ≥ 0
 *
 * d mean of the draws that are about as bad as one in a hundred by a reference: what they have in common, and no more
 * of anything else. References are the fall that the train does not hold; stops on even ground, from the steepest rise
 * under the train to near the fall that one draw in a hundred does not hold, at a crawl up to the fastest, so that what is
 * near balance is looked at however the line lies; and stops where a train meets another rail.
 */
import { percentile } from '../base/spread.ts';
import type { Potential } from '../things/line/potential.ts';
import { leastHeld } from './held.ts';
import { emptyModel, layScenario, modelOf, type StopModel } from './model.ts';
import { Draws, SEED } from './sample.ts';
import { likely, type Scenario, unsafeBy } from './scenario.ts';
import { stopDistance } from './stop.ts';
import type { InputsElsewhere, StopInputs } from './stop-inputs.ts';

/** Speeds for which caution is set, m/s. */
export interface Speeds {
  /** That the train runs at. */
  readonly run: number;
  /** The fastest that anybody has in mind. */
  readonly fastest: number;
}

/** What grows with ill luck. */
type Reference = (model: StopModel) => number;

interface Demand {
  readonly of: Reference;
  readonly target: number;
  readonly direction: Scenario;
}

/** Aimed at a little beyond the odds, for a thousand draws tell a percentile only so well. */
const AIMED_AT = 0.993;
/** Which draws make a direction: those about as bad as one in a hundred. */
const TAIL_FROM = 0.975;
/** No position is moved farther along one direction than so many times its greatest. */
const FARTHEST = 4;
const ROUNDS = 6;
const HALVINGS = 12;

const keys = Object.keys(likely) as (keyof Scenario)[];

/**
 * @param length of the line, m
 * @param n draws
 */
export function cautiousScenario(
  inputs: StopInputs,
  speeds: Speeds,
  length: number,
  n: number,
  seed: number = SEED,
): Scenario {
  const references = referencesOf(inputs, speeds, length, n, seed);
  const draws = new Draws(inputs, seed);
  const model = emptyModel(inputs);
  const found = references.map(() => new Float64Array(n));
  const drawn: Scenario[] = [];
  for (let i = 0; i < n; i++) {
    draws.next();
    draws.lay(model);
    drawn.push({ ...draws.scenario });
    references.forEach((of, r) => {
      found[r][i] = of(model);
    });
  }
  return likeliest(
    inputs,
    references.map((of, r) => {
      const sorted = Float64Array.from(found[r]).sort();
      const tail = percentile(sorted, TAIL_FROM);
      return {
        of,
        target: percentile(sorted, AIMED_AT),
        direction: inCommon(drawn.filter((_, i) => found[r][i] >= tail)),
      };
    }),
  );
}

/** Each weight in turn no greater than its own reference needs beside the others; at last none is left short. */
function likeliest(inputs: StopInputs, demands: readonly Demand[]): Scenario {
  const model = emptyModel(inputs);
  const weights = demands.map(() => 0);
  const meets = (i: number, weight: number): boolean => {
    weights[i] = weight;
    layScenario(model, inputs, moved(inputs, demands, weights), true);
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
  for (let round = 0; round < ROUNDS; round++) demands.forEach((_, i) => settle(i, 0));
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

/** Share of the running speed at which a stop is all but the reaction. */
const CRAWL = 0.05;
/**
 * Falls below that which one draw in a hundred does not hold, in what lies between that and the one likely held: where
 * the force of the brakes tells most, and where a bad spot does.
 */
const [HARD, MILD] = [0.5, 2];
/** Share of the draws with which these falls are found. */
const ROUGHLY = 0.25;

function referencesOf(
  inputs: StopInputs,
  { run, fastest }: Speeds,
  length: number,
  n: number,
  seed: number,
): Reference[] {
  const { potential, elsewhere } = inputs;
  const [bad, middle] = heldByOdds(inputs, run, Math.ceil(ROUGHLY * n), seed);
  // The nearer the line's steepest fall comes to what is just held, the more is asked; far below it nothing.
  const spare = Math.min(1, Math.max(0, (bad + potential.leastSlope) / (MILD * (middle - bad))));
  const asked = spare > 0 ? bad + spare * (middle - bad) : 0;
  const on = (slope: number, speed: number): Reference => {
    const ground = evenGround(potential, slope);
    return (model) => stopOn(model, ground, speed);
  };
  const falling = (below: number, speed: number): Reference[] => {
    const pull = Math.min(-potential.leastSlope, bad - below * (middle - bad));
    return pull > 0 ? [on(-pull, speed)] : [];
  };
  return [
    (model) => -Math.max(leastHeld(model, run), asked),
    ...falling(HARD, run),
    ...falling(MILD, run / 2),
    on(Math.max(0, potential.mostSlope), run * CRAWL),
    on(0, run),
    on(0, run / 2),
    ...(fastest > run ? [on(0, fastest), ...falling(MILD, fastest)] : []),
    ...elsewhere.flatMap((other, i): Reference[] => [
      ({ rails }) => (rails ? -leastHeld(rails.places[i].model, run) : 0),
      ...[run, run / 2].flatMap((v) => longest(inputs, headsOn(other, length), v)),
    ]),
  ];
}

/** Pull of the fall that is just held: of one draw in a hundred, and likely, N. */
function heldByOdds(
  inputs: StopInputs,
  speed: number,
  n: number,
  seed: number,
): [bad: number, middle: number] {
  const draws = new Draws(inputs, seed);
  const model = emptyModel(inputs);
  const held = new Float64Array(n)
    .map(() => {
      draws.next();
      draws.lay(model);
      return leastHeld(model, speed);
    })
    .sort();
  return [percentile(held, 1 - AIMED_AT), percentile(held, 0.5)];
}

/** m */
const EVEN_STEP = 2;

/** Ground that rises evenly, N, as long as the line with what lies beyond it. */
function evenGround({ step, count }: Potential, slope: number): Potential {
  const nodes = Math.ceil(((count - 1) * step) / EVEN_STEP) + 1;
  return {
    from: 0,
    step: EVEN_STEP,
    count: nodes,
    W: Float64Array.from({ length: nodes }, (_, j) => j * EVEN_STEP * slope),
    slope: new Float64Array(nodes).fill(slope),
    leastSlope: slope,
    mostSlope: slope,
  };
}

/** A stop on other ground, all of it the day's own rail, m. */
function stopOn(model: StopModel, ground: Potential, speed: number): number {
  const { potential, rails } = model;
  model.potential = ground;
  model.rails = undefined;
  const distance = stopDistance(model, 0, speed);
  model.potential = potential;
  model.rails = rails;
  return distance;
}

const BAD = unsafeBy(0.5);

/** Of the places whose likely stop ends that of the longest bad stop. */
function longest(inputs: StopInputs, places: readonly number[], speed: number): Reference[] {
  const [bad, mean] = [modelOf(inputs, BAD), modelOf(inputs, likely)];
  let most: { at: number; bad: number; mean: number } | undefined;
  for (const at of places) {
    const here = { at, bad: stopDistance(bad, at, speed), mean: stopDistance(mean, at, speed) };
    if (here.mean === Infinity) continue;
    if (!most || here.bad > most.bad || (here.bad === most.bad && here.mean > most.mean)) most = here;
  }
  const at = most?.at;
  return at === undefined ? [] : [(model) => stopDistance(model, at, speed)];
}

/** Where a train meets rail of another state, stands on it and leaves it. */
const headsOn = ({ from, to }: InputsElsewhere, length: number): number[] =>
  [...from].flatMap((at, i) => [at, (at + to[i]) / 2, to[i]].filter((head) => head >= 0 && head <= length));
