/**
 * Can it start? By joint draws: failing to start is a nuisance, so the careful figure is that of one draw in twenty.
 *
 *   starts where   F ≥ W′(s) + Σ m·g·r·σ        F = min(machine, µ·N)
 *
 * F pull at the rail (N), W′ pull of grade and curves (N), r rolling resistance and σ starting ÷ rolling by kind of
 * bearing, drawn each for each vehicle; a measured starting resistance stands for both. The curve counts once, in W′.
 * Drawn once for the train: adhesion under the driven wheels, steam, curve constant, error of the grade. The rail is that
 * under the driven wheels at each place, and of two the worse.
 */
import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick, seeded, triangular } from '../../base/spread.ts';
import { gradeSpread, potentialOf, speedMeant } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import { railsMet, type Span, worstUnder } from '../../outing/rails.ts';
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
  /** It likely stalls there: crawling, or where the rail is bad for a stretch, with the speed that it comes with. */
  readonly stalls: boolean;
  /** Share of draws that fail there. */
  readonly fails: number;
  /** Rail under the driven wheels there. */
  readonly rail: RailState;
  readonly drawn: Draws;
}

interface Draws {
  /** Per draw, by the rail under the driven wheels: what the train can overcome of grade and curve, N. */
  readonly spare: ReadonlyMap<RailState, Float64Array>;
  /** Per draw: curve drag ÷ likely. */
  readonly curve: Float64Array;
  readonly railAt: (node: number) => RailState;
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
  const railAt = railUnderDriven(context, pulls, state);
  const adhesionOn = (rail: RailState): Quantity => drivenAdhesion(assumed, rail);
  const tilt = pulls.curved.slope[steepest] / weight;
  const pullAt = (mu: number, steam: number): number | undefined =>
    trainPull(loaded, 0, { low: mu, value: mu, high: mu, how: 'assumed' }, tilt, steam);
  const likelyPull = (node: number): number | undefined => pullAt(adhesionOn(railAt(node)).value, 0);
  const told = (node: number) => ({
    at: pulls.curved.from + node * pulls.curved.step,
    node,
    rail: railAt(node),
    likelyPull: likelyPull(node) ?? 0,
    likelyNeed: pulls.curved.slope[node] + starting(context, () => 0),
    crawlNeed: pulls.curved.slope[node] + resistanceAt(resistanceTerms(loaded.vehicles, 0), 0),
  });
  if (likelyPull(steepest) === undefined) {
    const here = told(steepest);
    const none: Draws = { spare: new Map(), curve: new Float64Array(0), railAt };
    return { ...here, pull: undefined, need: here.likelyNeed, fails: 1, stalls: false, drawn: none };
  }
  const draw = seeded(SEED);
  const position = (): number => triangular(draw());
  const rails = railsMet(context, state);
  const grips = new Map(rails.map((rail) => [rail, adhesionOn(rail)]));
  const grade = gradeSpread(context);
  const pull = new Map(rails.map((rail) => [rail, new Float64Array(draws)]));
  const spare = new Map(rails.map((rail) => [rail, new Float64Array(draws)]));
  const curve = new Float64Array(draws);
  for (let i = 0; i < draws; i++) {
    const [grip, steam] = [position(), position()];
    const steeper = weight * pick(grade, position());
    curve[i] = pick(assumed.curveConstant, position()) / assumed.curveConstant.value;
    const needed = starting(context, position) + steeper;
    for (const [rail, adhesion] of grips) {
      const force = pullAt(pick(adhesion, grip), steam) as number;
      (pull.get(rail) as Float64Array)[i] = force;
      (spare.get(rail) as Float64Array)[i] = force - needed;
    }
  }
  const drawn: Draws = { spare, curve, railAt };
  const node = mostFailing(drawn, pulls, line.length, steepest);
  const ofGrade = pulls.grade.slope[node];
  const ofCurve = pulls.curved.slope[node] - ofGrade;
  const [pulled, left] = [pull, spare].map((of) => of.get(railAt(node)) as Float64Array);
  const short = (i: number): number => ofGrade + curve[i] * ofCurve - left[i];
  const ranked = Array.from(left.keys()).sort((a, b) => short(b) - short(a));
  const careful = ranked[Math.floor(draws * NUISANCE)];
  const lacks = (j: number): number => told(j).crawlNeed - told(j).likelyPull;
  return {
    ...told(node),
    // Bad rail that is not the day's is run over with what speed there is.
    stalls:
      railAt(node) === state
        ? lacks(node) > 0
        : lackingWork(lacks, node, pulls.curved.count) * pulls.curved.step >
          (loaded.effectiveMass * speedMeant(outing) ** 2) / 2,
    pull: pulled[careful],
    need: pulled[careful] + short(careful),
    fails: failsAt(drawn, pulls, node),
    drawn,
  };
}

/** Sum of what is lacking over all nodes in a row around one. */
function lackingWork(lacks: (node: number) => number, node: number, count: number): number {
  let sum = Math.max(0, lacks(node));
  for (const way of [1, -1]) {
    for (let j = node + way; j >= 0 && j < count && lacks(j) > 0; j += way) sum += lacks(j);
  }
  return sum;
}

/** The worst rail under any driven wheels, by node. */
function railUnderDriven(
  context: OutingContext,
  { curved }: Pulls,
  state: RailState,
): (node: number) => RailState {
  const { loaded } = context;
  const spans = loaded.vehicles.flatMap(({ vehicle, behind }) =>
    vehicle.groups.flatMap(({ driven, at, wheelBase }): Span[] => {
      const half = Math.max(WHEEL, wheelBase) / 2;
      return driven ? [{ front: behind + at - half, rear: behind + at + half }] : [];
    }),
  );
  const under = worstUnder(context, state, spans, curved.from + curved.count * curved.step);
  return (node) => under(curved.from + node * curved.step);
}

/** Length of rail that one wheel stands on for sure, m. */
const WHEEL = 0.3;

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
export function failsAt({ spare: on, curve, railAt }: Draws, { grade, curved }: Pulls, node: number): number {
  const spare = on.get(railAt(node)) as Float64Array;
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
    const fails = failsAt(start.drawn, pulls, j);
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
