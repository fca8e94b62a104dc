/**
 * Sideways margins and speed ceilings of every vehicle for every place of the train's head. A vehicle's
 * curvature and cant are those under its groups, weighted by the mass on each. Cost: a handful of
 * multiplications per vehicle and place, on typed arrays.
 */
import { GRAVITY } from '../../base/constants.ts';
import type { Body } from './body.ts';
import { type BodyDraws, tipsOf } from './draws.ts';
import { speedLeaving, type Tip } from './tipping.ts';
import type { Track } from './track.ts';

/** A vehicle at its place in the train, with what never changes along the line: as one draw in a hundred has it. */
export interface Rolling {
  readonly drawn: BodyDraws;
  readonly likely: Body;
  readonly body: Body;
  readonly index: number;
  /** m */
  readonly highest: number;
  readonly lift: Tip;
  readonly over: Tip;
  /** Groups: distance behind the train's head, m, and share of the mass. */
  readonly offsets: readonly number[];
  readonly weights: readonly number[];
  /** Moment of the wind ÷ (g·Z): the side acceleration, in g, that would do the same. */
  readonly wind: number;
}

/** @param likely the same vehicle with everything as likely */
export function rollingOf(drawn: BodyDraws, likely: Body): Rolling {
  const { vehicle, behind, index } = drawn.loaded;
  const tips = tipsOf(drawn);
  return {
    drawn,
    likely,
    ...tips,
    index,
    offsets: vehicle.groups.map((g) => behind + g.at),
    weights: likely.groupMass.map((m) => m / likely.mass),
  };
}

/** Curvature and cant under one vehicle, for every head place of the grid. */
export interface Ground {
  readonly curvature: Float64Array;
  readonly cant: Float64Array;
}

export function groundUnder(track: Track, rolling: Rolling, grid: Float64Array): Ground {
  const curvature = new Float64Array(grid.length);
  const cant = new Float64Array(grid.length);
  rolling.offsets.forEach((offset, i) => {
    addWeighted(track, track.curvature, grid, offset, rolling.weights[i], curvature);
    addWeighted(track, track.cant, grid, offset, rolling.weights[i], cant);
  });
  return { curvature, cant };
}

function addWeighted(
  { from, step, count }: Track,
  values: Float64Array,
  grid: Float64Array,
  offset: number,
  weight: number,
  into: Float64Array,
): void {
  for (let j = 0; j < grid.length; j++) {
    const r = Math.max(0, (grid[j] - offset - from) / step);
    const i = Math.min(r | 0, count - 2);
    const t = Math.min(1, r - i);
    into[j] += weight * (values[i] + t * (values[i + 1] - values[i]));
  }
}

export interface Margins {
  /** Least share of standing wheel load, by place. */
  readonly share: Float64Array;
  /** Distance from overturning: share of all wheels' load left on the lighter side. */
  readonly upright: Float64Array;
}

/** Margins of one vehicle along the line at the speeds of the grid. */
export function marginsAlong(rolling: Rolling, ground: Ground, speed: Float64Array): Margins {
  const { lift, over, wind } = rolling;
  const n = speed.length;
  const share = new Float64Array(n);
  const upright = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    const felt = (speed[j] * speed[j] * ground.curvature[j]) / GRAVITY;
    const theta = ground.cant[j];
    const sin = theta === 0 ? 0 : Math.sin(theta);
    const cos = theta === 0 ? 1 : Math.cos(theta);
    const side = sin - felt * cos;
    const normal = cos + felt * sin;
    const left = side + wind;
    const right = wind - side;
    share[j] = normal - lost(lift, left, right);
    upright[j] = normal - lost(over, left, right);
  }
  return { share, upright };
}

function lost({ left, right }: Tip, toLeft: number, toRight: number): number {
  const a = toLeft > 0 ? left * toLeft : 0;
  const b = toRight > 0 ? right * toRight : 0;
  return Math.max(a, b);
}

/** Speeds that leave every vehicle the share, m/s by place, and which vehicle sets each. */
export interface SpeedLine {
  readonly speed: Float64Array;
  readonly by: Int16Array;
}

/**
 * Where the share is not left even standing still and `strict` is off, the rule gives what it can: the curve
 * may then take away at most the part 1 − share of what is left standing there, so that the speed falls to
 * nothing only where a wheel lifts at rest.
 */
export function speedsLeaving(
  train: readonly Rolling[],
  grounds: readonly Ground[],
  points: number,
  share: number,
  strict: boolean,
): SpeedLine {
  const speed = new Float64Array(points).fill(Infinity);
  const by = new Int16Array(points).fill(-1);
  train.forEach(({ lift, index, wind }, v) => {
    const { curvature, cant } = grounds[v];
    const under = { curvature: 0, cant: 0 };
    for (let j = 0; j < points; j++) {
      if (curvature[j] === 0) continue;
      under.curvature = curvature[j];
      under.cant = cant[j];
      const limit = speedLeaving(lift, under, strict ? share : eased(lift, under, share, wind), wind);
      if (limit < speed[j]) {
        speed[j] = limit;
        by[j] = index;
      }
    }
  });
  return { speed, by };
}

function eased(lift: Tip, under: { curvature: number; cant: number }, share: number, wind: number): number {
  const helps = under.curvature >= 0 ? under.cant : -under.cant;
  const tip = under.curvature >= 0 ? lift.right : lift.left;
  if (helps - wind >= 0 || tip === Infinity) return share;
  const standing = Math.cos(helps) + tip * (Math.sin(helps) - wind);
  return share * Math.max(0, Math.min(1, standing));
}
