/**
 * The line integrated: height plus curve drag, and their integrals, as exact piecewise polynomials.
 *
 *   p(x) = z(x) + c·K(x)      K(x) = ∫ |κ| dx       P(x) = ∫ p dx
 *
 * z height (m), κ curvature (1/m), c curve-resistance constant (m: drag of a weight w in radius R is w·c/R).
 * A vehicle of mass m spread evenly over length L with its front at x has
 *
 *   potential   m·g·(P(x) − P(x−L))/L      pull backward   m·g·(p(x) − p(x−L))/L
 *
 * so grade and curve act averaged over the vehicle exactly, whatever the step of a later table.
 */
import { curvatureWithin } from './geometry.ts';
import type { Line } from './types.ts';

/** Pieces [x[i], x[i+1]) with p = p0 + p1·t + p2·t² and P = P0 + p0·t + p1·t²/2 + p2·t³/3, t = x − x[i]. */
export interface Primitives {
  readonly x: Float64Array;
  readonly P0: Float64Array;
  readonly p0: Float64Array;
  readonly p1: Float64Array;
  readonly p2: Float64Array;
  readonly count: number;
}

interface Piece {
  readonly at: number;
  readonly grade: number;
  /** |κ| = k0 + k1·t, not changing sign inside. */
  readonly k0: number;
  readonly k1: number;
}

/**
 * Primitives over [from, to]. A loop is laid end to end as often as needed; beyond the ends of a
 * point-to-point line the last grade continues, straight.
 *
 * @param curveConstant c in m, ≥ 0
 */
export function integrateLine(line: Line, from: number, to: number, curveConstant: number): Primitives {
  const pieces = line.loop ? unrollLoop(line, from, to) : piecesOf(line, from, to);
  const count = pieces.length;
  const x = new Float64Array(count);
  const P0 = new Float64Array(count);
  const p0 = new Float64Array(count);
  const p1 = new Float64Array(count);
  const p2 = new Float64Array(count);
  let p = line.heights[0].height;
  let P = 0;
  for (let i = 0; i < count; i++) {
    const piece = pieces[i];
    if (i > 0) {
      const t = piece.at - x[i - 1];
      P = P0[i - 1] + t * (p0[i - 1] + t * (p1[i - 1] / 2 + (t * p2[i - 1]) / 3));
      p = p0[i - 1] + t * (p1[i - 1] + t * p2[i - 1]);
    }
    x[i] = piece.at;
    P0[i] = P;
    p0[i] = p;
    p1[i] = piece.grade + curveConstant * piece.k0;
    p2[i] = (curveConstant * piece.k1) / 2;
  }
  return { x, P0, p0, p1, p2, count };
}

/** Pieces of one lap or of the whole line with its straight continuations to `from` and `to`. */
function piecesOf(line: Line, from: number, to: number): Piece[] {
  const cuts = new Set<number>(line.heights.map((k) => k.at));
  for (const curve of line.curves) {
    cuts.add(curve.from);
    cuts.add(curve.to);
    if (curve.startCurvature * curve.endCurvature < 0) {
      const share = curve.startCurvature / (curve.startCurvature - curve.endCurvature);
      cuts.add(curve.from + share * (curve.to - curve.from));
    }
  }
  const inside = [...cuts].filter((s) => s >= 0 && s < line.length).sort((a, b) => a - b);
  const pieces = inside.map((at, i) => pieceAt(line, at, inside[i + 1] ?? line.length));
  const first = pieces[0];
  if (from < 0) pieces.unshift({ at: from, grade: first.grade, k0: 0, k1: 0 });
  if (to > line.length) {
    pieces.push({ at: line.length, grade: pieces[pieces.length - 1].grade, k0: 0, k1: 0 });
  }
  return pieces;
}

function pieceAt(line: Line, at: number, end: number): Piece {
  const middle = (at + end) / 2;
  let i = 0;
  while (i < line.heights.length - 2 && line.heights[i + 1].at <= middle) i++;
  const [a, b] = [line.heights[i], line.heights[i + 1]];
  const grade = (b.height - a.height) / (b.at - a.at);
  const curve = line.curves.find((c) => middle >= c.from && middle < c.to);
  if (!curve) return { at, grade, k0: 0, k1: 0 };
  const k0 = Math.abs(curvatureWithin(curve, at));
  const k1 = (Math.abs(curvatureWithin(curve, end)) - k0) / (end - at);
  return { at, grade, k0, k1 };
}

function unrollLoop(line: Line, from: number, to: number): Piece[] {
  const lap = piecesOf(line, 0, line.length);
  const firstLap = Math.floor(from / line.length);
  const lastLap = Math.ceil(to / line.length);
  const pieces: Piece[] = [];
  for (let n = firstLap; n < Math.max(lastLap, firstLap + 1); n++) {
    for (const piece of lap) pieces.push({ ...piece, at: piece.at + n * line.length });
  }
  return pieces;
}

/** Index of the piece that holds x, searched from a hint; x before the first piece uses the first. */
export function pieceIndex(primitives: Primitives, x: number, hint: number): number {
  const { x: starts, count } = primitives;
  let i = hint;
  while (i + 1 < count && starts[i + 1] <= x) i++;
  while (i > 0 && starts[i] > x) i--;
  return i;
}
