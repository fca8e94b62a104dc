/**
 * The line's plan: where its middle lies on the level and which way it points, integrated from its curvature.
 *
 *   θ(s) = ∫ κ ds      x(s) = ∫ cos θ ds      y(s) = ∫ sin θ ds
 *
 * θ grows to the left, y lies to the left. Over a piece of one curvature it is an arc; with linear κ, θ is exact, and x and y follow by
 * three points of Gauss; pieces turn by no more than 0.1 rad, which leaves them right to 1e-10 of their length. A loop is laid on and on
 * over its seam; beyond the ends of a point-to-point line the track goes on straight, as its grade does.
 */
import type { CurveElement, Line } from './types.ts';

/** Greatest turn of a piece, rad. */
const TURN = 0.1;

export interface Plan {
  /** Pieces [from[i], from[i+1]): curvature there k0 + k1·t, at its start the place and the way. */
  readonly from: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
  readonly k0: Float64Array;
  readonly k1: Float64Array;
  /** Piece that was read last: the next is near. */
  last: number;
}

/** A place on the plan, m, and the way that the track points there. */
export interface Spot {
  x: number;
  y: number;
  cos: number;
  sin: number;
}

/** Covers chainages from … to at least, and says beyond what its last piece says. */
export function layPlan(line: Line, from: number, to: number): Plan {
  const pieces = piecesOf(line, from, to);
  const count = pieces.length;
  const of = (value: (p: Piece) => number): Float64Array => Float64Array.from(pieces, value);
  const plan: Plan = {
    from: of((p) => p.at),
    k0: of((p) => p.k0),
    k1: of((p) => p.k1),
    x: new Float64Array(count),
    y: new Float64Array(count),
    cos: new Float64Array(count),
    sin: new Float64Array(count),
    last: 0,
  };
  plan.cos[0] = 1;
  const end: Spot = { x: 0, y: 0, cos: 1, sin: 0 };
  for (let i = 1; i < count; i++) {
    spotWithin(plan, i - 1, plan.from[i] - plan.from[i - 1], end);
    const size = Math.hypot(end.cos, end.sin);
    plan.x[i] = end.x;
    plan.y[i] = end.y;
    plan.cos[i] = end.cos / size;
    plan.sin[i] = end.sin / size;
  }
  return plan;
}

/** Where the middle of the track lies at a chainage; written into `spot`. */
export function spotAt(plan: Plan, s: number, spot: Spot): void {
  const { from } = plan;
  let i = plan.last;
  while (i + 1 < from.length && from[i + 1] <= s) i++;
  while (i > 0 && from[i] > s) i--;
  plan.last = i;
  spotWithin(plan, i, s - from[i], spot);
}

/** 1/m, left positive. */
export function planCurvature(plan: Plan, s: number, spot: Spot): number {
  spotAt(plan, s, spot);
  const i = plan.last;
  return plan.k0[i] + (s - plan.from[i]) * plan.k1[i];
}

/** Sine and cosine of a small turn: right to 2e-11 at 0.1 rad. */
const sine = (a: number): number => a * (1 - ((a * a) / 6) * (1 - (a * a) / 20));
const cosine = (a: number): number => 1 - ((a * a) / 2) * (1 - ((a * a) / 12) * (1 - (a * a) / 30));

const NEAR = 0.5 - Math.sqrt(0.15);
const FAR = 0.5 + Math.sqrt(0.15);

function spotWithin({ x, y, cos, sin, k0, k1 }: Plan, i: number, t: number, spot: Spot): void {
  const [c, d, k, rate] = [cos[i], sin[i], k0[i], k1[i] / 2];
  if (k === 0 && rate === 0) {
    spot.x = x[i] + t * c;
    spot.y = y[i] + t * d;
    spot.cos = c;
    spot.sin = d;
    return;
  }
  if (rate === 0) {
    const a = k * t;
    const w = a * a;
    const along = t * (1 - (w / 6) * (1 - (w / 20) * (1 - w / 42)));
    const aside = (t * a * (1 - (w / 12) * (1 - (w / 30) * (1 - w / 56)))) / 2;
    const f = cosine(a);
    const g = sine(a);
    spot.x = x[i] + along * c - aside * d;
    spot.y = y[i] + along * d + aside * c;
    spot.cos = c * f - d * g;
    spot.sin = d * f + c * g;
    return;
  }
  const [p, q, r] = [NEAR * t, 0.5 * t, FAR * t];
  const [a, b, e] = [p * (k + p * rate), q * (k + q * rate), r * (k + r * rate)];
  const along = (t * (5 * (cosine(a) + cosine(e)) + 8 * cosine(b))) / 18;
  const aside = (t * (5 * (sine(a) + sine(e)) + 8 * sine(b))) / 18;
  spot.x = x[i] + along * c - aside * d;
  spot.y = y[i] + along * d + aside * c;
  const turn = t * (k + t * rate);
  const [f, g] = [cosine(turn), sine(turn)];
  spot.cos = c * f - d * g;
  spot.sin = d * f + c * g;
}

interface Piece {
  readonly at: number;
  readonly k0: number;
  readonly k1: number;
}

function piecesOf(line: Line, from: number, to: number): Piece[] {
  const laps = line.loop
    ? { first: Math.floor(from / line.length), last: Math.max(0, Math.ceil(to / line.length) - 1) }
    : { first: 0, last: 0 };
  const pieces: Piece[] = [];
  const start = line.loop ? laps.first * line.length : Math.min(from, 0);
  let at = start;
  for (let lap = laps.first; lap <= laps.last; lap++) {
    for (const curve of line.curves) {
      const begins = curve.from + lap * line.length;
      if (begins > at + 1e-9 || pieces.length === 0) pieces.push({ at, k0: 0, k1: 0 });
      pieces.push(...cut(curve, begins));
      at = curve.to + lap * line.length;
    }
  }
  pieces.push({ at, k0: 0, k1: 0 });
  return pieces;
}

/** A curve in pieces that turn little. */
function cut({ from, to, startCurvature, endCurvature }: CurveElement, at: number): Piece[] {
  const length = to - from;
  const most = Math.max(Math.abs(startCurvature), Math.abs(endCurvature));
  const count = Math.max(1, Math.ceil((length * most) / TURN));
  const rate = (endCurvature - startCurvature) / length;
  const step = length / count;
  return Array.from({ length: count }, (_, i) => ({
    at: at + i * step,
    k0: startCurvature + i * step * rate,
    k1: rate,
  }));
}
