/**
 * How sharply the track bends upward or downward, as a straight edge laid on the rail shows it.
 *
 *   v = z(s) − (z(s − c/2) + z(s + c/2))/2     R = c²/(8·v)
 *
 * z height of the rail, c length of the edge, v how far its middle stands off (above nothing: a crest); all m. Range: grades small;
 * a grade that changes at one point counts as a curve over the edge's length: R = c/(2·|g₂ − g₁|). Source: versine of a parabola.
 */
import { heightAt, onLine } from './geometry.ts';
import type { HeightKnot, Line } from './types.ts';

/** m; infinite where nothing stands off. */
export const verticalRadius = (chord: number, versine: number): number =>
  (chord * chord) / (8 * Math.abs(versine));

/** Above nothing on a crest, m. Beyond the ends of a line the last grade continues. */
export const versineAt = (line: Line, at: number, chord: number): number =>
  heightAt(line, at) - (heightAt(line, at - chord / 2) + heightAt(line, at + chord / 2)) / 2;

export interface VerticalCurve {
  readonly at: number;
  readonly lie: 'crest' | 'sag';
  readonly radius: number;
  readonly versine: number;
  /** No two points of the survey lie under the edge: how sharply it bends there is not known. */
  readonly sparse: boolean;
}

/** Points of the survey within half an edge to either side, fewer than two. */
export function isSparse({ heights, loop, length }: Line, at: number, reach: number): boolean {
  let near = 0;
  // The last point of a loop is its first one again.
  for (const k of loop ? heights.slice(0, -1) : heights) {
    const d = Math.abs(k.at - at);
    if (Math.min(d, loop ? length - d : d) <= reach && ++near > 1) return false;
  }
  return true;
}

/** Less stands off of an edge laid anywhere, m: level. */
const LEVEL = 1e-5;

/** By which one is sharper than another: all along a round they are alike. */
const grains = (versine: number): number => Math.round(Math.abs(versine) / LEVEL);

/**
 * Where it bends most, sharpest first: the edge's middle at every point of the survey, no two nearer than its length. The middle
 * stands off most at a point, for heights are straight between.
 */
export function verticalCurves(line: Line, chord: number, most: number): VerticalCurve[] {
  const all = line.heights
    .slice(0, line.loop ? -1 : undefined)
    .map(({ at }) => ({ at: onLine(line, at), versine: versineAt(line, at, chord) }))
    .filter(({ versine }) => Math.abs(versine) > LEVEL)
    .sort((a, b) => grains(b.versine) - grains(a.versine) || a.at - b.at);
  const kept: { at: number; versine: number }[] = [];
  for (const one of all) {
    if (kept.length >= most) break;
    if (kept.every((k) => Math.abs(k.at - one.at) >= chord)) kept.push(one);
  }
  return kept.map(({ at, versine }) => ({
    at,
    versine,
    lie: versine > 0 ? 'crest' : 'sag',
    radius: verticalRadius(chord, versine),
    sparse: isSparse(line, at, chord / 2),
  }));
}

/** One piece of a rounded bend turns no more than this, rad; a bend has so many pieces at most. */
const TURN = 1e-3;
const MOST = 400;

/**
 * The same line bent evenly at each point of its survey, over half the way to the nearer of its neighbours on either side: 1/R = |g₂ − g₁|/(2·T),
 * T half that way. Between points that lie alike no profile through three of them bends everywhere more gently (second divided difference: somewhere
 * it bends by 2·(g₂ − g₁)/(d₁ + d₂)); of a bend that only the survey's spacing makes sharp it is what is sure.
 */
export function roundedOff(line: Line): Line {
  const { heights, loop, length } = line;
  const points = loop ? heights.slice(0, -1) : heights;
  const beside = (i: number): HeightKnot | undefined => {
    if (!loop || (i >= 0 && i < points.length)) return points[i];
    const [turn, over] = i < 0 ? [-length, points.length] : [length, -points.length];
    return { ...points[i + over], at: points[i + over].at + turn };
  };
  const wrapped = (k: HeightKnot): HeightKnot => (loop && k.at < 0 ? { ...k, at: k.at + length } : k);
  const all = points
    .flatMap((point, i) => bent(beside(i - 1), point, beside(i + 1)))
    .map(wrapped)
    .sort((a, b) => a.at - b.at)
    // Where two bends meet midway, once.
    .filter((k, i, of) => i === 0 || k.at - of[i - 1].at > 1e-9);
  return { ...line, heights: loop ? [...all, { at: length, height: all[0].height }] : all };
}

function bent(
  before: HeightKnot | undefined,
  point: HeightKnot,
  after: HeightKnot | undefined,
): readonly HeightKnot[] {
  if (!before || !after) return [point];
  const [back, forth] = [point.at - before.at, after.at - point.at];
  const enters = (point.height - before.height) / back;
  const turn = (after.height - point.height) / forth - enters;
  const over = Math.min(back, forth) / 2;
  const half = Math.min(MOST, Math.ceil(Math.abs(turn) / TURN / 2));
  if (half === 0) return [point];
  return Array.from({ length: 2 * half + 1 }, (_, i) => {
    const off = over * (i / half - 1);
    const height = point.height + enters * off + (turn * (off + over) ** 2) / (4 * over);
    return { at: point.at + off, height };
  });
}
