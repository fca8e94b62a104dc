/**
 * Does it keep up a speed all along the line? Where the rail is the day's own it must hold its speed by pull alone, for a
 * train that was stopped at the foot has no run to take; bad rail that is not the day's is run over with what the train
 * has above that speed.
 *
 *   Σ (R(v) + W′(s) − F(v))·Δs ≤ ½·M·(v₀² − v²)      over the stretch of bad rail
 *
 * R rolling resistance, W′ pull of grade and curves, F pull at the rail (N), M mass with the inertia of the wheels (kg),
 * v the speed kept, v₀ the speed meant (m/s). By joint draws, one in twenty may fail.
 */
import { speedNamed } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { RailState } from '../../things/rail.ts';
import { keptSpeed } from '../speed/slowest.ts';
import {
  carefulAt,
  DRAWS,
  type Draws,
  drawHaul,
  failsAt,
  lackingWork,
  mostFailing,
  NUISANCE,
  type Pulls,
} from './draws.ts';
import { type HaulAt, haulAt } from './start.ts';

/**
 * Where it is hardest to keep up a brisk walk.
 *
 * @returns undefined where an engine's pull at that speed is not known
 */
export function carefulKeep(
  context: OutingContext,
  pulls: Pulls,
  state: RailState,
  draws: number = DRAWS,
): HaulAt | undefined {
  const drawn = drawHaul(context, pulls, state, draws, keptSpeed(context.outing));
  if (!drawn) return undefined;
  const own = mostFailing(drawn, pulls, (node) => drawn.railAt(node) === state);
  const bad = mostFailing(
    drawn,
    pulls,
    (node) =>
      drawn.railAt(node) !== state &&
      failsAt(drawn, pulls, node) > NUISANCE &&
      !runsOver(context, drawn, pulls, node),
  );
  const worst = bad && (!own || bad.fails > own.fails) ? bad : own;
  return haulAt(drawn, pulls, worst?.node ?? drawn.steepest);
}

/** A stretch of bad rail is run over with the speed that the train comes with; where nobody names it, with none to spare. */
function runsOver({ outing, loaded }: OutingContext, drawn: Draws, pulls: Pulls, node: number): boolean {
  const rail = drawn.railAt(node);
  const lacks = (j: number): number => {
    if (drawn.railAt(j) !== rail) return 0;
    const { pull, need } = carefulAt(drawn, pulls, j);
    return need - pull;
  };
  const spare = (speedNamed(outing) ?? drawn.speed) ** 2 - drawn.speed ** 2;
  return lackingWork(lacks, node, pulls) <= (loaded.effectiveMass * Math.max(0, spare)) / 2;
}

/** The fastest looked at, m/s. */
const FASTEST = 20;

/**
 * Speed kept up at a node in all but one of twenty draws, m/s: 0 where it stalls, at most 20 m/s.
 *
 * @returns undefined where an engine's pull at speed is not known, or it keeps up the fastest at which it is
 */
export function speedKept(
  context: OutingContext,
  pulls: Pulls,
  state: RailState,
  node: number,
): number | undefined {
  const keeps = (v: number): boolean | undefined => {
    const drawn = drawHaul(context, pulls, state, DRAWS, v);
    return drawn && failsAt(drawn, pulls, node) <= NUISANCE;
  };
  const slow = keeps(SLOWEST);
  if (slow === undefined) return undefined;
  if (!slow) return 0;
  if (keeps(FASTEST)) return FASTEST;
  let [low, high] = [SLOWEST, FASTEST];
  while (high - low > PRECISE) {
    const middle = (low + high) / 2;
    if (keeps(middle)) low = middle;
    else high = middle;
  }
  return keeps(high) === undefined ? undefined : low;
}

const SLOWEST = 0.05;
const PRECISE = 0.005;
