/**
 * Forces in the couplings on the move, and how they press sideways in curves: a pulled train is drawn
 * inward, a pushed one buckles outward. A pull T presses an end sideways with T·sin β, β its coupler's angle against
 * the vehicle's axis, from where both vehicles stand (things/coupler/bend.ts).
 */

import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import { gradeSpread } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type BrakedGroup, frictionAt } from '../../things/brake/force.ts';
import { readBend } from '../../things/coupler/bends.ts';
import { bendsOf, jointsOf, pairOf } from '../../things/coupler/train-bends.ts';
import type { LoadedTrain, LoadedVehicle } from '../../things/train/loaded.ts';
import { DRAWS, drawsOf, positionsOf } from './draws.ts';
import { read, type Track } from './track.ts';

/** Pull behind each vehicle but the last, N; a push is negative. `[gap·points + place]`. */
export type Pulls = Float64Array;

export type Way = 'running' | 'pushed' | 'pulled';

/**
 * Steady running: every vehicle's rolling resistance (likely) and grade, overcome by the engines in
 * proportion to their weight, wherever in the train they are. `pulled` and `pushed` ask what it would be
 * with all the effort at the head or at the tail.
 */
export function steadyPulls(loaded: LoadedTrain, drags: Drags, points: number, way: Way): Pulls {
  const { vehicles } = loaded;
  const count = vehicles.length;
  const pulls = new Float64Array(Math.max(0, count - 1) * points);
  const effort = effortShares(vehicles, way);
  for (let j = 0; j < points; j++) {
    let total = 0;
    for (let i = 0; i < count; i++) total += drags[i * points + j];
    // From the tail forward: what is behind the gap needs, less what pushes there.
    let pull = 0;
    for (let i = count - 1; i > 0; i--) {
      pull += drags[i * points + j] - effort[i] * total;
      pulls[(i - 1) * points + j] = pull;
    }
  }
  return pulls;
}

/** Rolling resistance and grade of each vehicle, N: `[vehicle·points + place]`. */
export type Drags = Float64Array;

export function dragsOf({ vehicles }: LoadedTrain, track: Track, grid: Float64Array): Drags {
  const points = grid.length;
  const drags = new Float64Array(vehicles.length * points);
  vehicles.forEach(({ vehicle, mass, behind }, i) => {
    const rolling = vehicle.resistance.rolling.value;
    for (let j = 0; j < points; j++) {
      const front = read(track, track.height, grid[j] - behind);
      const rear = read(track, track.height, grid[j] - behind - vehicle.length);
      drags[i * points + j] = mass * GRAVITY * (rolling + (front - rear) / vehicle.length);
    }
  });
  return drags;
}

/** Of each draw, N: the pull behind a vehicle with the train's head at a node. */
export type PullDraws = (gap: number, node: number) => Float64Array;

/** The same of steady running: rolling resistance is each vehicle's own, what the survey missed of the grade the train's. */
export function steadyDraws(context: OutingContext, drags: Drags, points: number): PullDraws {
  const { vehicles } = context.loaded;
  const effort = effortShares(vehicles, 'running');
  const steeper = drawsOf(gradeSpread(context), 'grade');
  return (gap, node) => {
    const pulls = new Float64Array(DRAWS);
    const pushed = effort.slice(gap + 1).reduce((sum, e) => sum + e, 0);
    vehicles.forEach(({ vehicle, mass }, k) => {
      const counts = (k > gap ? 1 : 0) - pushed;
      const weight = counts * mass * GRAVITY;
      const { rolling } = vehicle.resistance;
      const resists = drawsOf(rolling, `resistance ${k}`);
      const likely = counts * drags[k * points + node];
      for (let i = 0; i < DRAWS; i++) pulls[i] += likely + weight * (resists[i] - rolling.value + steeper[i]);
    });
    return pulls;
  };
}

/** The same under the brake, wherever the train is: force is each vehicle's own, adhesion and friction of blocks the train's. */
export function brakingDraws(
  masses: readonly number[],
  groups: readonly BrakedGroup[],
  adhesion: Quantity,
  counts: (g: BrakedGroup) => boolean,
): PullDraws {
  const acting = groups.filter(counts);
  const total = masses.reduce((sum, m) => sum + m, 0);
  const [grips, rubs] = [drawsOf(adhesion, 'adhesion'), positionsOf('friction')];
  const forces = acting.map((g) => {
    const blocks = drawsOf(g.block, `brake ${g.vehicle}`);
    const { friction } = g;
    return blocks.map((block, i) =>
      Math.min(block * (friction ? frictionAt(friction, 0, rubs[i]) : 1), grips[i] * g.load),
    );
  });
  return (gap) => {
    const ahead = masses.slice(0, gap + 1).reduce((sum, m) => sum + m, 0) / total;
    const pulls = new Float64Array(DRAWS);
    acting.forEach((g, n) => {
      const counts = ahead - (g.vehicle <= gap ? 1 : 0);
      for (let i = 0; i < DRAWS; i++) pulls[i] += counts * forces[n][i];
    });
    return pulls;
  };
}

function effortShares(vehicles: readonly LoadedVehicle[], way: Way): number[] {
  if (way === 'pulled') return vehicles.map((_, i) => (i === 0 ? 1 : 0));
  if (way === 'pushed') return vehicles.map((_, i) => (i === vehicles.length - 1 ? 1 : 0));
  const weight = vehicles.map((v) => (v.vehicle.traction ? v.mass : 0));
  const total = weight.reduce((sum, w) => sum + w, 0);
  return total > 0 ? weight.map((w) => w / total) : effortShares(vehicles, 'pulled');
}

/**
 * Pull behind each vehicle while brakes act, N: T_i = Σ_{j≤i} (m_j·a − B_j), a = ΣB/Σm. Resistance and
 * grade act on all alike and are left out.
 */
export function brakingPulls(masses: readonly number[], brakes: readonly number[]): number[] {
  const total = masses.reduce((sum, m) => sum + m, 0);
  const a = brakes.reduce((sum, b) => sum + b, 0) / total;
  let pull = 0;
  return masses.slice(0, -1).map((m, i) => {
    pull += m * a - brakes[i];
    return pull;
  });
}

/**
 * Retarding force of each vehicle at walking pace, N, likely or (position 1) strong, within adhesion.
 * `counts` picks which groups brake.
 */
export function brakeForces(
  count: number,
  groups: readonly BrakedGroup[],
  adhesion: number,
  position: number,
  counts: (g: BrakedGroup) => boolean,
): number[] {
  const forces = Array.from({ length: count }, () => 0);
  for (const g of groups) {
    if (!counts(g)) continue;
    const block = pick(g.block, position) * (g.friction ? frictionAt(g.friction, 0, position) : 1);
    forces[g.vehicle] += Math.min(block, adhesion * g.load);
  }
  return forces;
}

/** Of each gap by place of the head: share of a pull that presses the end ahead, and the end behind, to the left. */
export type Sides = readonly { readonly ahead: Float64Array; readonly behind: Float64Array }[];

/** By where both vehicles of each gap stand on the track; a shank that nobody stated is of the usual length. */
export function sidesOf({ line, loaded, outing }: OutingContext, grid: Float64Array): Sides {
  const pairs = jointsOf(loaded.vehicles.map((v) => v.vehicle)).map((j) =>
    pairOf(j, outing.assumed.coupler, 0),
  );
  return bendsOf(line, pairs).gaps.map(({ bends }, gap) => {
    const meets = loaded.vehicles[gap + 1].behind;
    const of = (values: Float64Array): Float64Array => grid.map((s) => readBend(bends, values, s - meets));
    return { ahead: of(bends.ahead), behind: of(bends.behind) };
  });
}
