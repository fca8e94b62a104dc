/**
 * How far two coupled ends stand out of line where the track bends upward or downward.
 *
 * Each vehicle's frame is a straight line over the heights of the rail under its two guides (a truck's is the mean under its
 * axles); its end, an overhang o beyond the nearer one, stands at
 *
 *   z = z₁ + (z₁ − z₂)·o/A
 *
 * z₁, z₂ rail under the nearer and the farther guide, A between them (m). Rise Δ = z of the end ahead − z of the end behind.
 * On a vertical curve of radius R one end stands off the rail by ((A/2 + o)² − (A/2)²)/(2·R). Range: grades small enough that
 * heights are as on the level (an error of some g²/2 of o). Source: common engineering geometry (parabola).
 */
import { lastBefore, onLine } from '../line/geometry.ts';
import type { Line } from '../line/types.ts';
import type { Vehicle } from '../vehicle/types.ts';
import { guidesOf } from './bend.ts';

/** Off the rail of a vertical curve, m; beyond a crest downward. R m > 0. */
export const endOffRail = (truckCentres: number, overhang: number, radius: number): number =>
  ((truckCentres / 2 + overhang) ** 2 - (truckCentres / 2) ** 2) / (2 * radius);

/**
 * Least radius of a vertical curve that two coupled ends may meet, m: no end stands farther off its rail than `room`, and one of them
 * may stand on straight track beside it. Where the track bends the other way at once, both add.
 */
export const leastVerticalRadius = (ahead: EndOnTrack, behind: EndOnTrack, room: number): number =>
  room > 0 ? Math.max(offAtOne(ahead), offAtOne(behind)) / room : Infinity;

/** Off the rail of a curve of 1 m, m; o·(A + o)/2 of bare guides. */
function offAtOne({ near, far, lever }: EndOnTrack): number {
  const square = (of: readonly number[]): number => of.reduce((sum, d) => sum + d * d, 0) / of.length;
  return Math.abs(square(near) * (1 + lever) - square(far) * lever) / 2;
}

/** One end of a vehicle: from where it is coupled to the axles under its two guides, m. */
export interface EndOnTrack {
  readonly near: readonly number[];
  readonly far: readonly number[];
  /** Overhang ÷ distance of the guides. */
  readonly lever: number;
}

/** Undefined where nothing holds the frame but one axle. */
export function endOnTrack(vehicle: Vehicle, end: 'front' | 'rear'): EndOnTrack | undefined {
  const guides = guidesOf(vehicle);
  const apart = guides[1] - guides[0];
  if (!(apart > 0)) return undefined;
  const axles = (at: number): number[] => {
    const group = vehicle.groups.find((g) => g.at === at);
    const from = end === 'front' ? at : vehicle.length - at;
    if (!group || group.axles < 2) return [from];
    const { axles: n, wheelBase } = group;
    return Array.from({ length: n }, (_, i) => from + wheelBase * (i / (n - 1) - 0.5));
  };
  const [near, far] = end === 'front' ? guides : [guides[1], guides[0]];
  const overhang = end === 'front' ? near : vehicle.length - near;
  return { near: axles(near), far: axles(far), lever: overhang / apart };
}

/** Height of the rail at a chainage. Asked from one place to the next along the line, it does not search anew. */
export type Rail = (at: number) => number;

function railOf(line: Line): Rail {
  const { heights } = line;
  let i = 0;
  return (at) => {
    const s = onLine(line, at);
    if (s < heights[i].at) i = lastBefore(heights, s);
    while (i < heights.length - 2 && heights[i + 1].at <= s) i++;
    const [a, b] = [heights[i], heights[i + 1]];
    return a.height + ((s - a.at) / (b.at - a.at)) * (b.height - a.height);
  };
}

/** Rail under the nearer and the farther guide; a rail for each axle. @param way +1 ahead of where the two meet, −1 behind */
export function guidesOver(line: Line, { near, far }: EndOnTrack, way: 1 | -1): readonly [Rail, Rail] {
  const under = (axles: readonly number[]): Rail => {
    const rails = axles.map((d) => ({ d: way * d, rail: railOf(line) }));
    return (at) => rails.reduce((sum, { d, rail }) => sum + rail(at + d), 0) / rails.length;
  };
  return [under(near), under(far)];
}

/** Of an end where the two meet at a chainage. */
function endOver(line: Line, end: EndOnTrack, way: 1 | -1): Rail {
  const { lever } = end;
  const [nearer, farther] = guidesOver(line, end, way);
  return (at) => {
    const z = nearer(at);
    return z + (z - farther(at)) * lever;
  };
}

/** m by chainage where the two meet; positive: the end ahead stands higher. */
export function riseOver(line: Line, ahead: EndOnTrack, behind: EndOnTrack): Rail {
  const [front, back] = [endOver(line, ahead, 1), endOver(line, behind, -1)];
  return (at) => front(at) - back(at);
}

export interface Rise {
  readonly rise: number;
  /** What cant and twist tilt the two faces apart there, at their edge, m, ≥ 0. */
  readonly tilt: number;
  readonly at: number;
}

export interface Extreme {
  readonly value: number;
  /** What cant and twist may add or take off there, ≥ 0. */
  readonly tilt: number;
  readonly at: number;
}

const NO_TILT = (): number => 0;

/**
 * Greatest value with what tilts added and least with it taken off, along the line, of what is linear in the heights under the axles
 * of both. Heights and cants are straight between their knots, so both turn only where an axle passes one: exact at no step.
 */
export function extremesOn(
  line: Line,
  ahead: EndOnTrack,
  behind: EndOnTrack,
  valueAt: (at: number) => number,
  tiltAt: (at: number) => number = NO_TILT,
): { readonly most: Extreme; readonly least: Extreme } {
  const offsets = [...ahead.near, ...ahead.far, ...[...behind.near, ...behind.far].map((d) => -d)];
  const [back, forth] = [-Math.min(...offsets), Math.max(...offsets)];
  let most: Extreme = { value: 0, tilt: 0, at: line.loop ? 0 : back };
  let least: Extreme = most;
  const knots = tiltAt === NO_TILT ? line.heights : [...line.heights, ...line.cants];
  const look = (at: number): void => {
    const [value, tilt] = [valueAt(at), tiltAt(at)];
    if (value + tilt > most.value + most.tilt) most = { value, tilt, at };
    if (value - tilt < least.value - least.tilt) least = { value, tilt, at };
  };
  // Where the first and the last axle stand at an end of the line, no other need be over a knot.
  if (!line.loop && back <= line.length - forth) for (const at of [back, line.length - forth]) look(at);
  for (const d of offsets)
    for (const knot of knots) {
      const at = line.loop ? onLine(line, knot.at - d) : knot.at - d;
      if (line.loop || (at >= back && at <= line.length - forth)) look(at);
    }
  return { most, least };
}

/** Greatest rise with the tilt added and least with it taken off. */
export function risesOn(
  line: Line,
  ahead: EndOnTrack,
  behind: EndOnTrack,
  tiltAt: (at: number) => number = NO_TILT,
): { readonly most: Rise; readonly least: Rise } {
  const { most, least } = extremesOn(line, ahead, behind, riseOver(line, ahead, behind), tiltAt);
  const rise = ({ value, tilt, at }: Extreme): Rise => ({ rise: value, tilt, at });
  return { most: rise(most), least: rise(least) };
}
