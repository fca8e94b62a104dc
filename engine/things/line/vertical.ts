/**
 * How sharply the track bends upward or downward, as a straight edge laid on the rail shows it.
 *
 *   v = z(s) − (z(s − c/2) + z(s + c/2))/2     R = c²/(8·v)
 *
 * z height of the rail, c length of the edge, v how far its middle stands off (above nothing: a crest); all m. Range: grades small;
 * a grade that changes at one point counts as a curve over the edge's length: R = c/(2·|g₂ − g₁|). Source: versine of a parabola.
 */
import { heightAt, onLine } from './geometry.ts';
import type { Line } from './types.ts';

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
