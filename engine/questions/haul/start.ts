/**
 * Can it start? By joint draws: failing to start is a nuisance, so the careful figure is that of one draw in twenty.
 *
 *   starts where   F ≥ W′(s) + Σ m·g·r·σ        F = min(machine, µ·N)
 *
 * F pull at the rail (N), W′ pull of grade and curves (N), r rolling resistance and σ starting ÷ rolling by kind of
 * bearing, drawn each for each vehicle; a measured starting resistance stands for both. The curve counts once, in W′.
 * Drawn once for the train: adhesion under the driven wheels, steam, curve constant, error of the grade.
 */
import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick, seeded, triangular } from '../../base/spread.ts';
import { gradeSpread, potentialOf } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { AssumedValues } from '../../things/assumed.ts';
import type { Potential } from '../../things/line/potential.ts';
import type { RailState } from '../../things/rail.ts';
import { trainPull } from '../../things/traction/pull.ts';
import { resistanceAt, resistanceTerms } from '../../things/train/resistance.ts';
import { hardestNode } from './haul.ts';

/** A nuisance: one start in twenty may fail, given what was stated. */
export const NUISANCE = 0.05;
const DRAWS = 400;
const SEED = 20_260_402;

/** What grade alone does along the line, and with curves at their likely drag. */
export interface Pulls {
  readonly grade: Potential;
  readonly curved: Potential;
}

export const pullsAlong = ({ line, loaded, outing }: OutingContext, step: number): Pulls => ({
  grade: potentialOf(line, loaded, 0, step, 0),
  curved: potentialOf(line, loaded, outing.assumed.curveConstant.value, step, 0),
});

export interface Start {
  /** Hardest place: head chainage, m. */
  readonly at: number;
  readonly node: number;
  /** Pull and need of the careful draw, N; undefined: an engine's pull is not known. */
  readonly pull: number | undefined;
  readonly need: number;
  readonly likelyPull: number;
  readonly likelyNeed: number;
  /** Likely need of the train that crawls there already, N: where it is more than the pull, it stalls. */
  readonly crawlNeed: number;
  /** Share of draws that fail there. */
  readonly fails: number;
  /** Per draw: what the train can overcome of grade and curve, N, and its curve drag ÷ likely. */
  readonly spare: Float64Array;
  readonly curve: Float64Array;
}

/** Adhesion of driving wheels: a light engine's on a dry rail, and as much less or more as the rail state's own; what was
 * measured or stated of today's rail stands for itself. */
export function drivenAdhesion(
  { adhesion, drivenAdhesion: driven }: AssumedValues,
  state: RailState,
): Quantity {
  if (adhesion[state].how !== 'assumed') return adhesion[state];
  if (state === 'dry') return driven;
  const share = driven.value / adhesion.dry.value;
  const of = adhesion[state];
  return { ...of, low: of.low * share, value: of.value * share, high: of.high * share };
}

export function carefulStart(
  context: OutingContext,
  pulls: Pulls,
  state: RailState,
  draws: number = DRAWS,
): Start {
  const { outing, line, loaded } = context;
  const { assumed } = outing;
  const steepest = hardestNode(pulls.curved, line.length);
  const weight = loaded.mass * GRAVITY;
  const adhesion = drivenAdhesion(assumed, state);
  const tilt = pulls.curved.slope[steepest] / weight;
  const pullAt = (mu: number, steam: number): number | undefined =>
    trainPull(loaded, 0, { ...adhesion, low: mu, value: mu, high: mu }, tilt, steam);
  const likelyPull = pullAt(adhesion.value, 0);
  const told = (node: number) => ({
    at: pulls.curved.from + node * pulls.curved.step,
    node,
    likelyPull: likelyPull ?? 0,
    likelyNeed: pulls.curved.slope[node] + starting(context, () => 0),
    crawlNeed: pulls.curved.slope[node] + resistanceAt(resistanceTerms(loaded.vehicles, 0), 0),
  });
  if (likelyPull === undefined) {
    const here = told(steepest);
    const none = new Float64Array(0);
    return { ...here, pull: undefined, need: here.likelyNeed, fails: 1, spare: none, curve: none };
  }
  const draw = seeded(SEED);
  const position = (): number => triangular(draw());
  const spare = new Float64Array(draws);
  const curve = new Float64Array(draws);
  const pull = new Float64Array(draws);
  for (let i = 0; i < draws; i++) {
    pull[i] = pullAt(pick(adhesion, position()), position()) as number;
    const steeper = weight * pick(gradeSpread(context), position());
    curve[i] = pick(assumed.curveConstant, position()) / assumed.curveConstant.value;
    spare[i] = pull[i] - starting(context, position) - steeper;
  }
  const node = mostFailing({ spare, curve }, pulls, line.length, steepest);
  const ofGrade = pulls.grade.slope[node];
  const ofCurve = pulls.curved.slope[node] - ofGrade;
  const short = (i: number): number => ofGrade + curve[i] * ofCurve - spare[i];
  const ranked = Array.from(spare.keys()).sort((a, b) => short(b) - short(a));
  const careful = ranked[Math.floor(draws * NUISANCE)];
  return {
    ...told(node),
    pull: pull[careful],
    need: pull[careful] + short(careful),
    fails: failsAt({ spare, curve }, pulls, node),
    spare,
    curve,
  };
}

type Draws = Pick<Start, 'spare' | 'curve'>;

/** Where most starts fail; of places alike, where the line pulls back hardest. */
function mostFailing(draws: Draws, pulls: Pulls, length: number, steepest: number): number {
  const { from, step, count } = pulls.curved;
  let worst = steepest;
  let most = failsAt(draws, pulls, steepest);
  for (let j = 0; j < count && from + j * step <= length; j++) {
    const fails = failsAt(draws, pulls, j);
    if (fails > most) [worst, most] = [j, fails];
  }
  return worst;
}

/** Resistance of the standing train, N. */
function starting({ loaded, outing }: OutingContext, position: () => number): number {
  return loaded.vehicles.reduce((sum, { vehicle, mass }) => {
    const { rolling, starting: measured } = vehicle.resistance;
    const factor = outing.assumed.startingByBearing[vehicle.bearing];
    const rate = measured ? pick(measured, position()) : pick(rolling, position()) * pick(factor, position());
    return sum + mass * GRAVITY * rate;
  }, 0);
}

/** Share of draws that fail at a node. */
export function failsAt({ spare, curve }: Draws, { grade, curved }: Pulls, node: number): number {
  const ofGrade = grade.slope[node];
  const ofCurve = curved.slope[node] - ofGrade;
  let fails = 0;
  for (let i = 0; i < spare.length; i++) if (ofGrade + curve[i] * ofCurve > spare[i]) fails++;
  return fails / spare.length;
}

/** Stretches of the line, m, on which one start in twenty or more fails. */
export function stretches(
  start: Start,
  pulls: Pulls,
  length: number,
): { from: number; to: number; fails: number }[] {
  const { from, step, count } = pulls.curved;
  const found: { from: number; to: number; fails: number }[] = [];
  for (let j = 0; j < count && from + j * step <= length; j++) {
    const fails = failsAt(start, pulls, j);
    if (fails <= NUISANCE) continue;
    const at = from + j * step;
    const last = found.at(-1);
    if (last && at - last.to <= TOGETHER)
      found[found.length - 1] = { ...last, to: at, fails: Math.max(last.fails, fails) };
    else found.push({ from: at, to: at, fails });
  }
  return found;
}

/** Stretches this near to each other are one, m. */
const TOGETHER = 5;
