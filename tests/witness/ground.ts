/**
 * The line as the witness reads it: height, curvature and cant at a place in the running direction, and what
 * a vehicle of some length feels of them. Own reading of the line's data; nothing of the engine's is run.
 *
 * Running place x (m) is the chainage forward and length − chainage in reverse. A loop is endless; beyond the
 * ends of other lines the last grade goes on, straight, with the last cant.
 */

import type { Outing } from '../../engine/outing/types.ts';
import type { Line } from '../../engine/things/line/types.ts';

export interface Ground {
  readonly line: Line;
  readonly reverse: boolean;
  /** Height, m above the datum, and its knots. */
  readonly at: Float64Array;
  readonly height: Float64Array;
  /** Cuts of the curvature, running direction; its value at both ends of each piece, 1/m, left positive. */
  readonly cut: Float64Array;
  readonly k0: Float64Array;
  readonly k1: Float64Array;
  /** ∫ |κ| up to each cut, rad. */
  readonly turned: Float64Array;
}

export function groundOf({ line, direction }: Outing): Ground {
  const reverse = direction === 'reverse';
  const L = line.length;
  const knots = line.heights.map((k) => ({ at: reverse ? L - k.at : k.at, height: k.height }));
  if (reverse) knots.reverse();
  const pieces = line.curves.map((c) =>
    reverse
      ? { from: L - c.to, to: L - c.from, k0: -c.endCurvature, k1: -c.startCurvature }
      : { from: c.from, to: c.to, k0: c.startCurvature, k1: c.endCurvature },
  );
  pieces.sort((a, b) => a.from - b.from);
  const cut: number[] = [];
  const k0: number[] = [];
  const k1: number[] = [];
  const put = (at: number, a: number, b: number): void => {
    cut.push(at);
    k0.push(a);
    k1.push(b);
  };
  let end = 0;
  for (const p of pieces) {
    if (p.from > end) put(end, 0, 0);
    // A piece that changes hand is cut where it is straight, so that |κ| is a straight line in each piece.
    if (p.k0 * p.k1 < 0) {
      const middle = p.from + ((p.to - p.from) * p.k0) / (p.k0 - p.k1);
      put(p.from, p.k0, 0);
      put(middle, 0, p.k1);
    } else put(p.from, p.k0, p.k1);
    end = p.to;
  }
  if (end < L) put(end, 0, 0);
  cut.push(L);
  const turned = new Float64Array(cut.length);
  for (let i = 0; i + 1 < cut.length; i++) {
    turned[i + 1] = turned[i] + ((Math.abs(k0[i]) + Math.abs(k1[i])) / 2) * (cut[i + 1] - cut[i]);
  }
  return {
    line,
    reverse,
    at: Float64Array.from(knots, (k) => k.at),
    height: Float64Array.from(knots, (k) => k.height),
    cut: Float64Array.from(cut),
    k0: Float64Array.from(k0),
    k1: Float64Array.from(k1),
    turned,
  };
}

/** Index i with at[i] ≤ x < at[i + 1], kept inside. */
function pieceOf(at: Float64Array, x: number): number {
  let low = 0;
  let high = at.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (at[middle] <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Whole laps before a place, and the rest of the way; none on a line with ends. */
function lapOf({ line }: Ground, x: number): [laps: number, rest: number] {
  if (!line.loop) return [0, x];
  const laps = Math.floor(x / line.length);
  return [laps, x - laps * line.length];
}

/** m above the datum. */
export function heightAt(ground: Ground, x: number): number {
  const { at, height } = ground;
  const s = lapOf(ground, x)[1];
  const i = pieceOf(at, s);
  return height[i] + ((height[i + 1] - height[i]) * (s - at[i])) / (at[i + 1] - at[i]);
}

/** ∫ |κ| dx from the origin, rad. */
function turnedAt(ground: Ground, x: number): number {
  const { cut, k0, k1, turned } = ground;
  const [laps, s] = lapOf(ground, x);
  const last = turned.length - 1;
  if (s <= 0) return laps * turned[last];
  if (s >= cut[last]) return (laps + 1) * turned[last];
  const i = pieceOf(cut, s);
  const share = (s - cut[i]) / (cut[i + 1] - cut[i]);
  const here = k0[i] + share * (k1[i] - k0[i]);
  return laps * turned[last] + turned[i] + ((Math.abs(k0[i]) + Math.abs(here)) / 2) * (s - cut[i]);
}

/** Mean rise over run under a body from rear to front. */
export const meanGrade = (ground: Ground, rear: number, front: number): number =>
  (heightAt(ground, front) - heightAt(ground, rear)) / (front - rear);

/** Mean |κ| under it, 1/m. */
export const meanBend = (ground: Ground, rear: number, front: number): number =>
  (turnedAt(ground, front) - turnedAt(ground, rear)) / (front - rear);

/** 1/m, left positive. */
export function curvatureAt(ground: Ground, x: number): number {
  const { cut, k0, k1 } = ground;
  const s = lapOf(ground, x)[1];
  if (s < 0 || s >= cut[cut.length - 1]) return 0;
  const i = pieceOf(cut, s);
  return k0[i] + ((k1[i] - k0[i]) * (s - cut[i])) / (cut[i + 1] - cut[i]);
}

/** m, right rail above the left one in the running direction. */
export function cantAt(ground: Ground, x: number): number {
  const { line, reverse } = ground;
  const { cants, length } = line;
  if (cants.length === 0) return 0;
  const s = lapOf(ground, x)[1];
  const at = reverse ? length - s : s;
  const sign = reverse ? -1 : 1;
  if (at <= cants[0].at) return sign * cants[0].cant;
  const last = cants[cants.length - 1];
  if (at >= last.at) return sign * last.cant;
  const i = cants.findIndex((k) => k.at > at) - 1;
  const share = (at - cants[i].at) / (cants[i + 1].at - cants[i].at);
  return sign * (cants[i].cant + share * (cants[i + 1].cant - cants[i].cant));
}

/** Running place of a chainage. */
export const running = ({ line, reverse }: Ground, chainage: number): number =>
  reverse ? line.length - chainage : chainage;

/** A stretch of chainage in the running direction. */
export function runningStretch(
  { line, reverse }: Ground,
  { from, to }: { readonly from: number; readonly to: number },
): { from: number; to: number } {
  return reverse ? { from: line.length - to, to: line.length - from } : { from, to };
}

/** Whether a stretch in the running direction covers a place; one that ends before it begins goes over the seam. */
export function covers({ line }: Ground, from: number, to: number, x: number): boolean {
  if (from <= to) return x >= from && x <= to;
  return line.loop && (x >= from || x <= to);
}
