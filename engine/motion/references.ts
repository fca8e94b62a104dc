/**
 * What caution is set by: the fall that the train does not hold, and its stops on ground made for it, so that what is near
 * balance is looked at however the line lies and nothing hangs on which places a line happens to have.
 *
 * They are gathered by what makes them bad. Near balance: the fall that is just held, stops on a fall that one draw in a
 * hundred does not hold, over a brow before it, where a late driver comes onto it, and down a steeper one to its foot.
 * Even: up the steepest rise under the train at a crawl, on the level at half and full speed and at the fastest that anybody
 * has in mind. Other rails: the places where the train meets them, as they lie.
 */
import { percentile } from '../base/spread.ts';
import type { Potential } from '../things/line/potential.ts';
import { leastHeld } from './held.ts';
import { emptyModel, modelOf, type StopModel } from './model.ts';
import { Draws } from './sample.ts';
import { likely, unsafeBy } from './scenario.ts';
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
export type Reference = (model: StopModel) => number;

/** Which draws are asked for, of how many, from which seed. */
export interface Drawn {
  readonly n: number;
  readonly seed: number;
}

/** Share of the running speed at which a stop is all but the reaction, and that at which a bad spot is much of it. */
const [CRAWL, SLOW] = [0.05, 0.3];
/**
 * Falls below that which one draw in a hundred does not hold, in what lies between that and the one likely held: where
 * the force of the brakes tells most, and where a bad spot does.
 */
const [HARD, MILD] = [0.5, 2];
/** Where the fall begins behind a brow, in likely stops on the level from the running speed. */
const BROW = 1.15;
/** Where a fall ends that is not held, in lengths of the train. */
const DOWN_TO_FOOT = 4;
/** Share of the draws with which these falls are found. */
const ROUGHLY = 0.25;
/** Odds of the fall that is not held. */
const NOT_HELD = 0.007;

export interface References {
  readonly nearBalance: readonly Reference[];
  readonly even: readonly Reference[];
  readonly elsewhere: readonly Reference[];
}

export function referencesOf(
  inputs: StopInputs,
  { run, fastest }: Speeds,
  length: number,
  { n, seed }: Drawn,
): References {
  const { potential, elsewhere } = inputs;
  const [bad, middle] = heldByOdds(inputs, run, Math.ceil(ROUGHLY * n), seed);
  // The nearer the line's steepest fall comes to what is just held, the more is asked; far below it nothing.
  const spare = Math.min(1, Math.max(0, (bad + potential.leastSlope) / (MILD * (middle - bad))));
  const asked = spare > 0 ? bad + spare * (middle - bad) : 0;
  const pullBelow = (below: number): number => Math.min(-potential.leastSlope, bad - below * (middle - bad));
  const on = (slope: number, speed: number): Reference => stopOn(evenGround(potential, slope), speed);
  const falling = (below: number, speed: number): Reference[] => {
    const pull = pullBelow(below);
    return pull > 0 ? [on(-pull, speed)] : [];
  };
  const faster = fastest > run;
  return {
    nearBalance: [
      (model) => -Math.max(leastHeld(model, run), asked),
      ...falling(HARD, run),
      ...falling(HARD, run * SLOW),
      ...falling(MILD, run / 2),
      ...falling(MILD, run * SLOW),
      ...(faster ? falling(MILD, fastest) : []),
      ...browBefore(inputs, pullBelow(HARD), run),
      ...footOf(inputs, pullBelow(HARD), run),
    ],
    even: [
      on(Math.max(0, potential.mostSlope), run * CRAWL),
      on(0, run),
      on(0, run / 2),
      ...(faster ? [on(0, fastest)] : []),
    ],
    elsewhere: elsewhere.flatMap((other, i): Reference[] => [
      ({ rails }) => (rails ? -leastHeld(rails.places[i].model, run) : 0),
      ...[run, run / 2].flatMap((v) => longest(inputs, headsOn(other, length), v)),
    ]),
  };
}

/** Those of some vehicles by themselves, wherever they are: what they hold on each rail, their stop on the level, and at a crawl. */
export function referencesOfPart({ elsewhere }: StopInputs, run: number): Reference[] {
  return [
    (model) => -leastHeld(model, run),
    stopOn(evenGround(FAR, 0), run),
    stopOn(evenGround(FAR, 0), run * CRAWL),
    ...elsewhere.map(
      (_, i): Reference =>
        ({ rails }) =>
          rails ? -leastHeld(rails.places[i].model, run) : 0,
    ),
  ];
}

/** Pull of the fall that is just held: of one draw in a hundred, and likely, N. */
function heldByOdds(
  inputs: StopInputs,
  speed: number,
  n: number,
  seed: number,
): [bad: number, middle: number] {
  const draws = new Draws(inputs, seed, n);
  const model = emptyModel(inputs);
  const held = new Float64Array(n)
    .map(() => {
      draws.next();
      draws.lay(model);
      return leastHeld(model, speed);
    })
    .sort();
  return [percentile(held, NOT_HELD), percentile(held, 0.5)];
}

/** m */
const EVEN_STEP = 2;

/** Room for the stop of a part, which has no line of its own. */
const FAR = { step: EVEN_STEP, count: 1000 };

/** Ground whose pull is told by place, N, as long as the line with what lies beyond it. */
function madeGround({ step, count }: Room, slopeAt: (s: number) => number): Potential {
  const nodes = Math.ceil(((count - 1) * step) / EVEN_STEP) + 1;
  const slope = Float64Array.from({ length: nodes }, (_, j) => slopeAt(j * EVEN_STEP));
  const W = new Float64Array(nodes);
  for (let j = 1; j < nodes; j++) W[j] = W[j - 1] + EVEN_STEP * slopeAt((j - 0.5) * EVEN_STEP);
  return {
    from: 0,
    step: EVEN_STEP,
    count: nodes,
    W,
    slope,
    leastSlope: Math.min(slope[0], slope[nodes - 1]),
    mostSlope: Math.max(slope[0], slope[nodes - 1]),
  };
}

type Room = Pick<Potential, 'step' | 'count'>;

const evenGround = (potential: Room, slope: number): Potential => madeGround(potential, () => slope);

/** Level ground, and a fall behind it that comes under the train as its length runs over the brow. */
function browBefore(inputs: StopInputs, pull: number, run: number): Reference[] {
  const { potential, length } = inputs;
  if (!(pull > 0)) return [];
  const onLevel = stopOn(evenGround(potential, 0), run)(modelOf(inputs, likely, false));
  const brow = onLevel * BROW;
  return [
    stopOn(
      madeGround(potential, (s) => -pull * Math.min(1, Math.max(0, (s - brow) / length))),
      run,
    ),
  ];
}

/** A fall that is not held, and level at its foot: what the train gains on the way down it loses there. */
function footOf({ potential, length }: StopInputs, held: number, run: number): Reference[] {
  const pull = -potential.leastSlope;
  if (!(pull > Math.max(0, held))) return [];
  const foot = DOWN_TO_FOOT * length;
  const slopeAt = (s: number): number => -pull * Math.min(1, Math.max(0, 1 - (s - foot) / length));
  return [stopOn(madeGround(potential, slopeAt), run)];
}

/** A stop on other ground, all of it the day's own rail, m. */
const stopOn =
  (ground: Potential, speed: number): Reference =>
  (model) => {
    const { potential, rails } = model;
    model.potential = ground;
    model.rails = undefined;
    const distance = stopDistance(model, 0, speed);
    model.potential = potential;
    model.rails = rails;
    return distance;
  };

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
