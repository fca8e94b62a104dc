/**
 * Hauling by joint draws: what a train can overcome of grade and curve, at a stand or at a speed.
 *
 *   at a stand   F(0) ≥ W′(s) + Σ m·g·r·σ        at a speed   F(v) ≥ W′(s) + Σ (m·g·(r + r′·v) + c·v²)
 *
 * F = min(machine, µ·N) pull at the rail (N), W′ pull of grade and curves (N), r rolling resistance and r′ its speed
 * term, c resistance by the square of speed, σ starting ÷ rolling by kind of bearing; r and σ drawn each for each
 * vehicle; a measured starting resistance stands for both. The curve counts once, in W′. Drawn once for the train:
 * adhesion under the driven wheels, the engine's heights, steam, curve constant, error of the grade. The rail is that under the driven
 * wheels at each place, and of two the worse. At every speed the draws are the same.
 */
import { GRAVITY } from '../../base/constants.ts';
import { FitDraws } from '../../base/fit-draws.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick, seeded, triangular } from '../../base/spread.ts';
import { gradeSpread, potentialOf } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import { railsMet, type Span, worstUnder } from '../../outing/rails.ts';
import type { AssumedValues } from '../../things/assumed.ts';
import type { Potential } from '../../things/line/potential.ts';
import type { RailState } from '../../things/rail.ts';
import { trainPull } from '../../things/traction/pull.ts';
import { resistanceAt, resistanceTerms } from '../../things/train/resistance.ts';

/** A nuisance: one in twenty may fail, given what was stated. */
export const NUISANCE = 0.05;
export const DRAWS = 400;
const SEED = 20_260_402;
const HEIGHTS_SEED = 20_260_405;

/** What grade alone does along the line, and with curves at their likely drag. */
export interface Pulls {
  readonly grade: Potential;
  readonly curved: Potential;
  /** m, of the line. */
  readonly length: number;
}

export const pullsAlong = ({ line, loaded, outing }: OutingContext, step: number): Pulls => ({
  grade: potentialOf(line, loaded, 0, step, 0),
  curved: potentialOf(line, loaded, outing.assumed.curveConstant.value, step, 0),
  length: line.length,
});

/** Chainage of the train's head at a node, m. */
export const headAt = ({ curved: { from, step } }: Pulls, node: number): number => from + node * step;

/** Nodes on the line. */
export const nodesOf = ({ curved: { from, step, count }, length }: Pulls): number =>
  Math.min(count, Math.floor((length - from) / step) + 1);

/** Where the line likely pulls back hardest. */
function hardestNode(pulls: Pulls): number {
  const { slope } = pulls.curved;
  let worst = 0;
  const count = nodesOf(pulls);
  for (let j = 1; j < count; j++) if (slope[j] > slope[worst]) worst = j;
  return worst;
}

/** Adhesion of driving wheels: a light engine's on a dry rail, and as much less or more as the rail state's own; what was
 * measured or stated of today's rail stands for itself. */
export function drivenAdhesion(
  { adhesion, drivenAdhesion: driven }: AssumedValues,
  state: RailState,
): Quantity {
  if (adhesion[state].how !== 'assumed') return adhesion[state];
  if (state === 'dry') return driven;
  // What was measured of the dry rail tells nothing of how much better driving wheels hold than others.
  const share = adhesion.dry.how === 'assumed' ? driven.value / adhesion.dry.value : 1;
  const of = adhesion[state];
  return { ...of, low: of.low * share, value: of.value * share, high: of.high * share };
}

/** All draws of one train on one day, at one speed. */
export interface Draws {
  /** m/s */
  readonly speed: number;
  readonly steepest: number;
  /** Per draw, by the rail under the driven wheels: pull, and what of it is left for grade and curve, N. */
  readonly pull: ReadonlyMap<RailState, Float64Array>;
  readonly spare: ReadonlyMap<RailState, Float64Array>;
  /** Per draw: curve drag ÷ likely. */
  readonly curve: Float64Array;
  /** Most curve drag of any draw, and least spare on each rail: where that does no draw fails. */
  readonly most: { readonly curve: number; readonly least: ReadonlyMap<RailState, number> };
  readonly railAt: (node: number) => RailState;
  /** Likely pull on a rail, N. */
  readonly likelyPull: (rail: RailState) => number;
  /** The same on a rail that holds a little more. */
  readonly morePull: (rail: RailState) => number;
}

/** @returns undefined where an engine's pull at that speed is not known */
export function drawHaul(
  context: OutingContext,
  pulls: Pulls,
  state: RailState,
  draws: number,
  speed: number,
): Draws | undefined {
  const { outing, loaded } = context;
  const { assumed } = outing;
  const weight = loaded.mass * GRAVITY;
  const steepest = hardestNode(pulls);
  const tilt = pulls.curved.slope[steepest] / weight;
  const pullAt = (mu: number, steam: number, side: number): number | undefined => {
    const adhesion = { low: mu, value: mu, high: mu, how: 'assumed' } as const;
    return trainPull(loaded, { speed, adhesion, grade: tilt, position: steam, side }, assumed.engineHeight);
  };
  const likelyPull = (rail: RailState, more = 1): number | undefined =>
    pullAt(drivenAdhesion(assumed, rail).value * more, 0, 0);
  if (likelyPull(state) === undefined) return undefined;
  const draw = seeded(SEED);
  // By themselves: who measures them leaves all other draws as they were.
  const heights = seeded(HEIGHTS_SEED);
  const fits = new FitDraws(SEED);
  const position = (): number => triangular(draw());
  const rails = railsMet(context, state);
  const grips = new Map(rails.map((rail) => [rail, drivenAdhesion(assumed, rail)]));
  const grade = gradeSpread(context);
  const pull = new Map(rails.map((rail) => [rail, new Float64Array(draws)]));
  const spare = new Map(rails.map((rail) => [rail, new Float64Array(draws)]));
  const curve = new Float64Array(draws);
  for (let i = 0; i < draws; i++) {
    fits.next();
    const [grip, steam] = [position(), position()];
    const side = triangular(heights());
    const steeper = weight * pick(grade, position());
    curve[i] = pick(assumed.curveConstant, position()) / assumed.curveConstant.value;
    const needed = resistance(context, position, speed, fits) + steeper;
    for (const [rail, adhesion] of grips) {
      const force = pullAt(pick(adhesion, grip), steam, side) as number;
      (pull.get(rail) as Float64Array)[i] = force;
      (spare.get(rail) as Float64Array)[i] = force - needed;
    }
  }
  return {
    speed,
    steepest,
    pull,
    spare,
    curve,
    most: {
      curve: curve.reduce((a, b) => Math.max(a, b), 0),
      least: new Map([...spare].map(([rail, of]) => [rail, of.reduce((a, b) => Math.min(a, b), Infinity)])),
    },
    railAt: railUnderDriven(context, pulls, state),
    likelyPull: (rail) => likelyPull(rail) as number,
    morePull: (rail) => likelyPull(rail, 1 + LITTLE) as number,
  };
}

/** So much more of adhesion tells whether it, and not the machine, sets the pull. */
const LITTLE = 0.01;

/**
 * Resistance of the train at a stand or at a speed, N; every draw takes the same positions at every speed.
 *
 * @param fits of what was measured together; absent: all at `position`
 */
export function resistance(
  { loaded, outing }: OutingContext,
  position: () => number,
  speed: number,
  fits?: FitDraws,
): number {
  const at = ({ fit }: Quantity, drawn: number): number => (fit && fits ? fits.position(fit) : drawn);
  return loaded.vehicles.reduce((sum, { vehicle, mass }) => {
    const { rolling, starting: measured, perSpeed, perSpeedSquared } = vehicle.resistance;
    const factor = outing.assumed.startingByBearing[vehicle.bearing];
    const first = position();
    const second = measured ? 0 : position();
    if (speed > 0) {
      const rate = pick(rolling, at(rolling, first)) + pick(perSpeed, at(perSpeed, first)) * speed;
      return sum + mass * GRAVITY * rate + perSpeedSquared * speed * speed;
    }
    const rate = measured
      ? pick(measured, at(measured, first))
      : pick(rolling, at(rolling, first)) * pick(factor, second);
    return sum + mass * GRAVITY * rate;
  }, 0);
}

/** Likely resistance of the rolling train, N. */
export const rollingAt = ({ loaded }: OutingContext, speed: number): number =>
  resistanceAt(resistanceTerms(loaded.vehicles, 0), speed);

/** The worst rail under any driven wheels, by node. */
function railUnderDriven(
  context: OutingContext,
  pulls: Pulls,
  state: RailState,
): (node: number) => RailState {
  const { loaded } = context;
  const spans = loaded.vehicles.flatMap(({ vehicle, behind }) =>
    vehicle.groups.flatMap(({ driven, at, wheelBase }): Span[] => {
      const half = Math.max(WHEEL, wheelBase) / 2;
      return driven ? [{ front: behind + at - half, rear: behind + at + half }] : [];
    }),
  );
  const under = worstUnder(context, state, spans, headAt(pulls, pulls.curved.count));
  return (node) => under(headAt(pulls, node));
}

/** Length of rail that one wheel stands on for sure, m. */
const WHEEL = 0.3;

/** Share of draws that fail at a node. */
export function failsAt(
  { spare: on, curve, railAt, most }: Draws,
  { grade, curved }: Pulls,
  node: number,
): number {
  const spare = on.get(railAt(node)) as Float64Array;
  const ofGrade = grade.slope[node];
  const ofCurve = curved.slope[node] - ofGrade;
  if (ofGrade + Math.max(0, ofCurve) * most.curve <= (most.least.get(railAt(node)) as number)) return 0;
  let fails = 0;
  for (let i = 0; i < spare.length; i++) if (ofGrade + curve[i] * ofCurve > spare[i]) fails++;
  return fails / spare.length;
}

/** Pull and need of the draw at a node that only one in twenty falls short of, N. */
export function carefulAt(
  draws: Draws,
  { grade, curved }: Pulls,
  node: number,
): { readonly pull: number; readonly need: number } {
  const rail = draws.railAt(node);
  const [pull, left] = [draws.pull, draws.spare].map((of) => of.get(rail) as Float64Array);
  const ofGrade = grade.slope[node];
  const ofCurve = curved.slope[node] - ofGrade;
  const short = (i: number): number => ofGrade + draws.curve[i] * ofCurve - left[i];
  const ranked = Array.from(left.keys()).sort((a, b) => short(b) - short(a));
  const careful = ranked[Math.floor(left.length * NUISANCE)];
  return { pull: pull[careful], need: pull[careful] + short(careful) };
}

/** Where most draws fail among the nodes that count; of nodes alike the first looked at. */
export function mostFailing(
  draws: Draws,
  pulls: Pulls,
  counts: (node: number) => boolean = () => true,
): { readonly node: number; readonly fails: number } | undefined {
  let worst = counts(draws.steepest)
    ? { node: draws.steepest, fails: failsAt(draws, pulls, draws.steepest) }
    : undefined;
  const end = nodesOf(pulls);
  const { grade, curved } = pulls;
  const ofCurve = (node: number): number => curved.slope[node] - grade.slope[node];
  for (let node = 0; node < end; node++) {
    // Where both grade and curve are less, on the same rail, no more can fail.
    if (
      worst &&
      grade.slope[node] <= grade.slope[worst.node] &&
      ofCurve(node) <= ofCurve(worst.node) &&
      draws.railAt(node) === draws.railAt(worst.node)
    )
      continue;
    if (!counts(node)) continue;
    const fails = failsAt(draws, pulls, node);
    if (!worst || fails > worst.fails) worst = { node, fails };
  }
  return worst;
}

/** Work that is lacking over all nodes in a row around one, J. @param lacks N */
export function lackingWork(lacks: (node: number) => number, node: number, { curved }: Pulls): number {
  let sum = Math.max(0, lacks(node));
  for (const way of [1, -1]) {
    for (let j = node + way; j >= 0 && j < curved.count && lacks(j) > 0; j += way) sum += lacks(j);
  }
  return sum * curved.step;
}
