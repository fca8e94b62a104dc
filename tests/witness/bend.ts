/**
 * Couplers in curves by brute force: the middle of the track as a string of points a millimetre or so apart, two frames
 * laid on it by walking along the string, the second pushed up until its pivot is a bar's length from the first's.
 */
import type { Line } from '../../engine/things/line/types.ts';

export interface Trace {
  readonly step: number;
  readonly from: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

function curvature({ curves, loop, length }: Line, s: number): number {
  const at = loop ? ((s % length) + length) % length : s;
  for (const c of curves)
    if (at >= c.from && at < c.to)
      return (c.startCurvature * (c.to - at) + c.endCurvature * (at - c.from)) / (c.to - c.from);
  return 0;
}

/** Points from … to, m of the line, each a step on in the direction half-way through it. */
export function traceOf(line: Line, from: number, to: number, step: number): Trace {
  const count = Math.ceil((to - from) / step) + 1;
  const [x, y] = [new Float64Array(count), new Float64Array(count)];
  let heading = 0;
  for (let i = 1; i < count; i++) {
    const turn = curvature(line, from + (i - 0.5) * step) * step;
    x[i] = x[i - 1] + step * Math.cos(heading + turn / 2);
    y[i] = y[i - 1] + step * Math.sin(heading + turn / 2);
    heading += turn;
  }
  return { step, from, x, y };
}

type Point = readonly [number, number];

function pointAt({ step, from, x, y }: Trace, s: number): Point {
  const r = (s - from) / step;
  const i = Math.floor(r);
  return [x[i] + (r - i) * (x[i + 1] - x[i]), y[i] + (r - i) * (y[i + 1] - y[i])];
}

const far = ([a, b]: Point, [c, d]: Point): number => Math.hypot(a - c, b - d);

/** Way along the track, ahead (1) or back (−1) of s, to the point as far off as the crow flies; by halving. */
function walk(trace: Trace, s: number, way: 1 | -1, distance: number): number {
  const here = pointAt(trace, s);
  let [low, high] = [distance, distance * 1.5];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (far(here, pointAt(trace, s + way * middle)) < distance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** One end: between the guides, from the nearer guide to the vehicle's end, from there in to the pivot; m. */
export interface Frame {
  readonly guides: number;
  readonly overhang: number;
  readonly shank: number;
}

interface Stands {
  readonly pivot: Point;
  /** Way from the far guide to the coupled end. */
  readonly out: Point;
}

function stand(near: Point, other: Point, { overhang, shank }: Frame): Stands {
  const long = far(near, other);
  const out: Point = [(near[0] - other[0]) / long, (near[1] - other[1]) / long];
  const reach = overhang - shank;
  return { pivot: [near[0] + out[0] * reach, near[1] + out[1] * reach], out };
}

/** Between a way and the way from one point to another, rad. */
function between(out: Point, from: Point, to: Point): number {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  return Math.abs(Math.atan2(out[0] * y - out[1] * x, out[0] * x + out[1] * y));
}

/** Both angles, rad, with the near guide of the vehicle ahead an overhang ahead of `at`. */
export function bent(trace: Trace, ahead: Frame, behind: Frame, at: number): readonly [number, number] {
  const guide = at + ahead.overhang;
  const first = stand(
    pointAt(trace, guide),
    pointAt(trace, guide + walk(trace, guide, 1, ahead.guides)),
    ahead,
  );
  const second = (gap: number): Stands => {
    const near = guide - gap;
    const other = near - walk(trace, near, -1, behind.guides);
    return stand(pointAt(trace, near), pointAt(trace, other), behind);
  };
  const bar = ahead.shank + behind.shank;
  const middle = ahead.overhang + behind.overhang;
  let [low, high] = [middle - bar, middle + bar];
  for (let i = 0; i < 40; i++) {
    const gap = (low + high) / 2;
    if (far(first.pivot, second(gap).pivot) < bar) low = gap;
    else high = gap;
  }
  const next = second((low + high) / 2);
  return [between(first.out, first.pivot, next.pivot), between(next.out, next.pivot, first.pivot)];
}
