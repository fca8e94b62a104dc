/** Flange climb along the line: for each way of running the train, which vehicle would derail first, where. */

import { GRAVITY } from '../../base/constants.ts';
import type { OutingContext } from '../../outing/open.ts';
import { bestRail } from '../../outing/rails.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import { isCar } from '../../things/train/cars.ts';
import {
  climbing,
  climbSpeed,
  type FlangeShape,
  flangeShape,
  guiding,
  type Truck,
  trucksOf,
} from './flange.ts';
import type { Ground, Rolling, SpeedLine } from './margins.ts';
import { brakeForces, brakingPulls, dragsOf, type Pulls, type Sides, steadyPulls, type Way } from './pull.ts';
import { shareAt } from './tipping.ts';
import type { Track } from './track.ts';

export type FlangeWay = 'running' | 'creeping' | 'braking' | 'engine-braking' | 'pulled' | 'pushed';
export const flangeWays: readonly FlangeWay[] = [
  'running',
  'creeping',
  'braking',
  'engine-braking',
  'pulled',
  'pushed',
];

/** Where L/V comes nearest to its limit. */
export interface NearestClimb {
  readonly index: number;
  readonly group: number;
  readonly at: number;
  /** L/V and its limit; Infinity: the guiding wheel has lifted. */
  readonly found: number;
  readonly limit: number;
  readonly shape: FlangeShape;
  /** Pull (push negative) at the two ends of the vehicle, N. */
  readonly front: number;
  readonly rear: number;
}

export interface Derailing {
  readonly nearest: Readonly<Record<FlangeWay, NearestClimb | undefined>>;
  /** On the run, of the vehicles alone whose flange angle nobody measured. */
  readonly unmeasured: NearestClimb | undefined;
  /** Speed at which a flange of known shape reaches its limit on the run, m/s. */
  readonly ceiling: SpeedLine;
}

/** Curves flatter than this do not press a flange, 1/m (1 km radius). */
const STRAIGHT = 1e-3;

/** @param all also as if pulled, and as if pushed, by all the effort at one end */
export function lookAtFlanges(
  context: OutingContext,
  track: Track,
  grid: Float64Array,
  speed: Float64Array,
  rolling: readonly Rolling[],
  grounds: readonly Ground[],
  sides: Sides,
  groups: readonly BrakedGroup[],
  all: boolean,
): Derailing {
  const { loaded, outing } = context;
  const count = loaded.vehicles.length;
  const adhesion = outing.assumed.adhesion[bestRail(context, outing.conditions.railState)].high;
  const masses = loaded.vehicles.map((v) => v.mass);
  const braking = (counts: (g: BrakedGroup) => boolean): Pulls =>
    constant(brakingPulls(masses, brakeForces(count, groups, adhesion, 1, counts)), grid.length);
  const along: Along = { grid, speed, rolling, grounds, sides, count };
  const drags = dragsOf(loaded, track, grid);
  const steady = (way: Way): Pulls => steadyPulls(loaded, drags, grid.length, way);
  const running = steady('running');
  const isEngine = (g: BrakedGroup): boolean => !isCar(loaded.vehicles[g.vehicle].vehicle);
  return {
    nearest: {
      running: nearest(along, running),
      creeping: nearest({ ...along, speed: new Float64Array(grid.length) }, running),
      braking: nearest(
        along,
        braking(() => true),
      ),
      'engine-braking': nearest(along, braking(isEngine)),
      pulled: all ? nearest(along, steady('pulled')) : undefined,
      pushed: all ? nearest(along, steady('pushed')) : undefined,
    },
    unmeasured: nearest(unmeasuredOf(along), running),
    ceiling: ceilingOf(along, running),
  };
}

/** What peak forces in the couplings do in curves. */
export interface PeakInCurves {
  readonly climb?: NearestClimb;
  /** Where the share of all wheels' load left on the lighter side is least: 0 goes over. */
  readonly tip?: { readonly index: number; readonly at: number; readonly share: number };
}

/**
 * The train at a speed by place with a pull of its own in each gap, N (a push negative), wherever it stands: as
 * when the peaks come while it is in that curve, and at both ends of a vehicle at once.
 */
export function inCurves(
  { loaded }: OutingContext,
  { grid, rolling, grounds, sides }: Pick<Along, 'grid' | 'rolling' | 'grounds' | 'sides'>,
  speed: Float64Array,
  pulls: readonly number[],
): PeakInCurves {
  const along: Along = { grid, speed, rolling, grounds, sides, count: loaded.vehicles.length };
  const everywhere = constant(pulls, grid.length);
  const climb = nearest(along, everywhere);
  const tip = nearestTip(along, everywhere);
  return { ...(climb ? { climb } : {}), ...(tip ? { tip } : {}) };
}

function nearestTip(along: Along, pulls: Pulls): PeakInCurves['tip'] {
  let worst: PeakInCurves['tip'];
  const over = new Map(along.rolling.map((r) => [r.index, r]));
  eachCurvedPlace(along, pulls, (truck, _shape, under, ends, j, index) => {
    const at = over.get(index);
    if (truck.group !== 0 || !at) return;
    const moment = ends.front * truck.frontHeight + ends.rear * truck.rearHeight;
    const drawn = moment / (GRAVITY * at.body.Z);
    const share = shareAt(at.over, under, along.speed[j], at.wind, drawn);
    if (!worst || share < worst.share) worst = { index, at: along.grid[j], share };
  });
  return worst;
}

interface Along {
  readonly grid: Float64Array;
  readonly speed: Float64Array;
  readonly rolling: readonly Rolling[];
  readonly grounds: readonly Ground[];
  readonly sides: Sides;
  readonly count: number;
}

function unmeasuredOf(along: Along): Along {
  const of = along.rolling.flatMap(({ body }, v) => (flangeShape(body.vehicle).angleKnown ? [] : [v]));
  return { ...along, rolling: of.map((v) => along.rolling[v]), grounds: of.map((v) => along.grounds[v]) };
}

function constant(pulls: readonly number[], points: number): Pulls {
  const all = new Float64Array(pulls.length * points);
  pulls.forEach((pull, i) => {
    all.fill(pull, i * points, (i + 1) * points);
  });
  return all;
}

function nearest(along: Along, pulls: Pulls): NearestClimb | undefined {
  let worst: NearestClimb | undefined;
  let used = -Infinity;
  const into = { left: 0, onLeft: 0, onRight: 0 };
  eachCurvedPlace(along, pulls, (truck, shape, under, ends, j, index, front, rear) => {
    const found = climbing(
      guiding(truck, under, along.speed[j] ** 2, ends, 0, into),
      under.curvature,
      shape.friction,
    );
    // A flange no steeper than its friction holds nothing.
    const share = shape.limit > 0 ? found / shape.limit : found > 0 ? Infinity : 0;
    if (share <= used) return;
    used = share;
    worst = { index, group: truck.group, at: along.grid[j], found, limit: shape.limit, shape, front, rear };
  });
  return worst;
}

function ceilingOf(along: Along, pulls: Pulls): SpeedLine {
  const points = along.grid.length;
  const speed = new Float64Array(points).fill(Infinity);
  const by = new Int16Array(points).fill(-1);
  const into = { left: 0, onLeft: 0, onRight: 0 };
  eachCurvedPlace(along, pulls, (truck, shape, under, ends, j, index) => {
    if (!shape.angleKnown) return;
    const limit = climbSpeed(truck, under, ends, shape);
    if (limit >= speed[j]) return;
    // Cant alone may lift a creeping outer wheel off its flange's hold that the curve, run at speed, presses down.
    const run = guiding(truck, under, along.speed[j] ** 2, ends, 0, into);
    if (limit === 0 && climbing(run, under.curvature, shape.friction) <= shape.limit) return;
    speed[j] = limit;
    by[j] = index;
  });
  return { speed, by };
}

type Visit = (
  truck: Truck,
  shape: FlangeShape,
  under: { curvature: number; cant: number },
  ends: { front: number; rear: number },
  place: number,
  index: number,
  front: number,
  rear: number,
) => void;

/** Every truck at every place where it stands in a curve. The objects handed over are used again. */
function eachCurvedPlace(along: Along, pulls: Pulls, visit: Visit): void {
  const { grid, rolling, grounds, sides, count } = along;
  const points = grid.length;
  const under = { curvature: 0, cant: 0 };
  const ends = { front: 0, rear: 0 };
  rolling.forEach(({ body, index }, v) => {
    const shape = flangeShape(body.vehicle);
    const trucks = trucksOf(body);
    const { curvature, cant } = grounds[v];
    for (let j = 0; j < points; j++) {
      const k = curvature[j];
      if (k < STRAIGHT && k > -STRAIGHT) continue;
      under.curvature = k;
      under.cant = cant[j];
      const front = index > 0 ? pulls[(index - 1) * points + j] : 0;
      const rear = index < count - 1 ? pulls[index * points + j] : 0;
      ends.front = index > 0 ? front * sides[index - 1].behind[j] : 0;
      ends.rear = index < count - 1 ? rear * sides[index].ahead[j] : 0;
      for (const truck of trucks) visit(truck, shape, under, ends, j, index, front, rear);
    }
  });
}
