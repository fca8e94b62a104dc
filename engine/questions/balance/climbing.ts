/** Flange climb along the line: for each way of running the train, which vehicle would derail first, where. */

import { GRAVITY } from '../../base/constants.ts';
import { percentile } from '../../base/spread.ts';
import type { OutingContext } from '../../outing/open.ts';
import { bestRail } from '../../outing/rails.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import { isCar } from '../../things/train/cars.ts';
import { bodyInto, careful, DRAWS, drawBeyond, positionsOf } from './draws.ts';
import {
  climbing,
  climbSpeed,
  type EndForces,
  type FlangeShape,
  flangeDraws,
  flangeShape,
  guiding,
  type Truck,
  trucksOf,
} from './flange.ts';
import type { Ground, Rolling, SpeedLine } from './margins.ts';
import {
  brakeForces,
  brakingDraws,
  brakingPulls,
  dragsOf,
  type PullDraws,
  type Pulls,
  type Sides,
  steadyDraws,
  steadyPulls,
  type Way,
} from './pull.ts';
import { overturnOf, shareAt, type Under } from './tipping.ts';
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
  const points = grid.length;
  const adhesion = outing.assumed.adhesion[bestRail(context, outing.conditions.railState)];
  const masses = loaded.vehicles.map((v) => v.mass);
  const along: Along = { grid, speed, rolling, grounds, sides, count: masses.length };
  const drags = dragsOf(loaded, track, grid);
  const steady = (way: Way): Pulls => steadyPulls(loaded, drags, points, way);
  const running = { likely: steady('running'), drawn: steadyDraws(context, drags, points) };
  const braking = (counts: (g: BrakedGroup) => boolean): Forces => ({
    likely: constant(
      brakingPulls(masses, brakeForces(masses.length, groups, adhesion.value, 0, counts)),
      points,
    ),
    drawn: brakingDraws(masses, groups, adhesion, counts),
  });
  const isEngine = (g: BrakedGroup): boolean => !isCar(loaded.vehicles[g.vehicle].vehicle);
  const onTheRun = carefulClimbs(along, running);
  return {
    nearest: {
      running: greatest(onTheRun),
      creeping: nearest({ ...along, speed: new Float64Array(points) }, running),
      braking: nearest(
        along,
        braking(() => true),
      ),
      'engine-braking': nearest(along, braking(isEngine)),
      pulled: all ? nearest(along, even(steady('pulled'), points)) : undefined,
      pushed: all ? nearest(along, even(steady('pushed'), points)) : undefined,
    },
    unmeasured: nearest(unmeasuredOf(along), running),
    ceiling: ceilingOf(along, running.likely, onTheRun),
  };
}

/** Pulls in the couplings: likely ones by gap and place, and those of each draw. */
interface Forces {
  readonly likely: Pulls;
  readonly drawn: PullDraws;
}

/** The same pulls in every draw. */
const even = (pulls: Pulls, points: number): Forces => ({
  likely: pulls,
  drawn: (gap, node) => new Float64Array(DRAWS).fill(pulls[gap * points + node]),
});

/** What peak forces in the couplings do in curves. */
export interface PeakInCurves {
  readonly climb?: NearestClimb;
  /** Where the share of all wheels' load left on the lighter side is least: 0 goes over. */
  readonly tip?: { readonly index: number; readonly at: number; readonly share: number };
}

/**
 * The train at a speed by place with a pull of its own in each gap, wherever it stands: as when the peaks come while it
 * is in that curve, and at both ends of a vehicle at once.
 *
 * @param peaks of each run by gap, N, a push negative
 */
export function inCurves(
  { loaded }: OutingContext,
  { grid, rolling, grounds, sides }: Pick<Along, 'grid' | 'rolling' | 'grounds' | 'sides'>,
  speed: Float64Array,
  peaks: readonly Float64Array[],
): PeakInCurves {
  const along: Along = { grid, speed, rolling, grounds, sides, count: loaded.vehicles.length };
  const usual = peaks.map((of) => percentile(of.slice().sort(), 0.5));
  const runs = positionsOf('run of the couplings').map((p) => share(p));
  const forces: Forces = {
    likely: constant(usual, grid.length),
    // Both ends of a vehicle, and all that is asked of it, in the same run.
    drawn: (gap) =>
      runs.map((of) => peaks[gap][Math.min(peaks[gap].length - 1, Math.floor(of * peaks[gap].length))]),
  };
  const climb = nearest(along, forces);
  const tip = nearestTip(along, forces);
  return { ...(climb ? { climb } : {}), ...(tip ? { tip } : {}) };
}

/** Share of draws below a position. */
const share = (position: number): number =>
  position < 0 ? (1 + position) ** 2 / 2 : 1 - (1 - position) ** 2 / 2;

/** Where the likely train comes nearest to going over, and how near one draw in a hundred is there. */
function nearestTip(along: Along, { likely, drawn }: Forces): PeakInCurves['tip'] {
  let worst: { v: number; index: number; j: number; share: number } | undefined;
  const found = new Map(along.rolling.map((r, v) => [r.index, { ...r, v, over: overturnOf(r.likely) }]));
  eachCurvedPlace(along, likely, (truck, _shape, under, ends, j, index) => {
    const at = found.get(index);
    if (truck.group !== 0 || !at) return;
    const left = shareAt(at.over, under, along.speed[j], at.wind, drawnAside(truck, ends));
    if (!worst || left < worst.share) worst = { v: at.v, index, j, share: left };
  });
  if (!worst) return undefined;
  const { v, index, j } = worst;
  const lost = eachDraw(along, { v, group: 0, j }, drawn, (truck, under, ends) => {
    const { body } = truck;
    const wind = along.rolling[v].drawn.gale / body.Z;
    return -shareAt(overturnOf(body), under, along.speed[j], wind, drawnAside(truck, ends));
  });
  return { index, at: along.grid[j], share: -careful(lost) };
}

/** Moment of the couplings to the left ÷ (g·Z). */
const drawnAside = ({ body, frontHeight, rearHeight }: Truck, { front, rear }: EndForces): number =>
  (front * frontHeight + rear * rearHeight) / (GRAVITY * body.Z);

/** A figure of one truck at one place in every draw of its vehicle and of the pulls at its ends: always the same objects. */
function eachDraw(
  { rolling, grounds, sides, count }: Along,
  { v, group, j }: Pick<Suspect, 'v' | 'group' | 'j'>,
  drawn: PullDraws,
  figure: (truck: Truck, under: Under, ends: EndForces, i: number) => number,
): Float64Array {
  const { index, drawn: bodies, likely } = rolling[v];
  const body = { ...likely, groupMass: [...likely.groupMass] };
  const truck = { ...trucksOf(likely)[group], body };
  const under = { curvature: grounds[v].curvature[j], cant: grounds[v].cant[j] };
  const front = index > 0 ? drawn(index - 1, j) : undefined;
  const rear = index < count - 1 ? drawn(index, j) : undefined;
  const [atFront, atRear] = [sides[index - 1]?.behind[j] ?? 0, sides[index]?.ahead[j] ?? 0];
  const ends = { front: 0, rear: 0 };
  const figures = new Float64Array(DRAWS);
  for (let i = 0; i < DRAWS; i++) {
    bodyInto(bodies, i, body);
    ends.front = front ? front[i] * atFront : 0;
    ends.rear = rear ? rear[i] * atRear : 0;
    figures[i] = figure(truck, under, ends, i);
  }
  return figures;
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

/** A vehicle where its likely self, on an unlucky flange, comes nearest to its limit: the share of it that it uses. */
interface Suspect {
  readonly v: number;
  readonly group: number;
  readonly j: number;
  readonly used: number;
}

/** The worst place of each vehicle. */
function suspects(along: Along, pulls: Pulls): Suspect[] {
  const worst = new Map<number, Suspect>();
  const into = { left: 0, onLeft: 0, onRight: 0 };
  const place = new Map(along.rolling.map((r, v) => [r.index, v]));
  eachCurvedPlace(along, pulls, (truck, shape, under, ends, j, index) => {
    const onIt = guiding(truck, under, along.speed[j] ** 2, ends, 0, into);
    const used = usedOf(climbing(onIt, under.curvature, shape.friction), shape.limit);
    const before = worst.get(index);
    if (before && used <= before.used) return;
    worst.set(index, { v: place.get(index) as number, group: truck.group, j, used });
  });
  return [...worst.values()];
}

/** A flange no steeper than its friction holds nothing. */
const usedOf = (found: number, limit: number): number =>
  limit > 0 ? found / limit : found > 0 ? Infinity : 0;

/** A climb by odds, and what the same place looked like before. */
interface CarefulClimb extends NearestClimb {
  readonly used: number;
  readonly suspected: number;
}

/** How far below the worst, or below what a flange bears, a vehicle is looked at closely. */
const CLOSELY = 0.8;

/** Of all vehicles that come near their limits, or nearest: what one draw in a hundred uses. */
function carefulClimbs(along: Along, { likely, drawn }: Forces): CarefulClimb[] {
  const all = suspects(along, likely);
  const most = all.reduce((m, s) => Math.max(m, s.used), 0);
  return all
    .filter(({ used }) => used >= CLOSELY * Math.min(1, most))
    .map((suspect) => carefulClimb(along, drawn, suspect));
}

function carefulClimb(along: Along, drawn: PullDraws, suspect: Suspect): CarefulClimb {
  const { v, group, j, used: suspected } = suspect;
  const { index, likely } = along.rolling[v];
  const known = flangeShape(likely.vehicle);
  const { angle, friction, limit } = flangeDraws(known, index);
  const into = { left: 0, onLeft: 0, onRight: 0 };
  const founds = eachDraw(along, suspect, drawn, (truck, under, ends, i) =>
    climbing(guiding(truck, under, along.speed[j] ** 2, ends, 0, into), under.curvature, friction[i]),
  );
  const used = founds.map((found, i) => usedOf(found, limit[i]));
  const at = drawBeyond(used);
  return {
    index,
    group,
    at: along.grid[j],
    found: founds[at],
    limit: limit[at],
    shape: { ...known, angle: angle[at], friction: friction[at], limit: limit[at] },
    front: index > 0 ? drawn(index - 1, j)[at] : 0,
    rear: index < along.count - 1 ? drawn(index, j)[at] : 0,
    used: used[at],
    suspected,
  };
}

const greatest = (climbs: readonly CarefulClimb[]): NearestClimb | undefined =>
  climbs.reduce<CarefulClimb | undefined>((a, b) => (a && a.used >= b.used ? a : b), undefined);

const nearest = (along: Along, forces: Forces): NearestClimb | undefined =>
  greatest(carefulClimbs(along, forces));

/** By the likely train, each vehicle's limit moved by what odds made of its worst place. */
function ceilingOf(along: Along, pulls: Pulls, climbs: readonly CarefulClimb[]): SpeedLine {
  const points = along.grid.length;
  const speed = new Float64Array(points).fill(Infinity);
  const by = new Int16Array(points).fill(-1);
  const into = { left: 0, onLeft: 0, onRight: 0 };
  const moved = new Map(climbs.map((c) => [c.index, c.suspected / c.used]));
  eachCurvedPlace(along, pulls, (truck, known, under, ends, j, index) => {
    if (!known.angleKnown) return;
    const move = moved.get(index) ?? 1;
    const shape = move > 0 && move < Infinity ? { ...known, limit: known.limit * move } : known;
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
  rolling.forEach(({ likely, index }, v) => {
    const shape = flangeShape(likely.vehicle);
    const trucks = trucksOf(likely);
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
