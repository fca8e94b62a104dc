/**
 * The potential of a train along the line: W(s) in J with the train's head at chainage s, and its slope
 * W'(s) in N, the force of grade and curves against the motion (positive: it holds the train back).
 *
 *   W(s) = g·Σ_b q_b·P(s − d_b)      q_b = m_b/L_b − m_{b−1}/L_{b−1}
 *
 * over the boundaries b between vehicles, d_b behind the head. Stored on an even grid and read by cubic
 * Hermite interpolation, so that a look-up costs the same for one car or twenty.
 */
import { GRAVITY } from '../../base/constants.ts';
import { riseIn, slopeIn } from './cubic.ts';
import { integrateLine, pieceIndex } from './primitives.ts';
import type { Line } from './types.ts';

/** A body spread evenly over its length. */
export interface Stretch {
  /** Front end behind the head, m. */
  readonly behind: number;
  /** m, > 0 */
  readonly length: number;
  /** kg */
  readonly mass: number;
}

export interface Potential {
  /** Chainage of the first node, m. */
  readonly from: number;
  readonly step: number;
  /** Nodes; the last chainage is from + (count − 1)·step. */
  readonly count: number;
  /** J */
  readonly W: Float64Array;
  /** N */
  readonly slope: Float64Array;
  /** Least slope on the grid, N: the strongest push forward. */
  readonly leastSlope: number;
  readonly mostSlope: number;
}

/**
 * @param stretches vehicles, front first, touching end to end
 * @param from first chainage of the head, m
 * @param to last chainage of the head, m, > from
 * @param step grid step, m, > 0
 * @param curveConstant c in m (drag = weight·c/R), ≥ 0
 */
export function buildPotential(
  line: Line,
  stretches: readonly Stretch[],
  from: number,
  to: number,
  step: number,
  curveConstant: number,
): Potential {
  const count = Math.ceil((to - from) / step - 1e-9) + 1;
  const last = stretches[stretches.length - 1];
  const primitives = integrateLine(
    line,
    from - last.behind - last.length,
    from + count * step,
    curveConstant,
  );
  const W = new Float64Array(count);
  const slope = new Float64Array(count);
  for (const [distance, weight] of boundaries(stretches)) {
    addBoundary(primitives, from - distance, step, count, weight * GRAVITY, W, slope);
  }
  let leastSlope = Infinity;
  let mostSlope = -Infinity;
  for (let j = 0; j < count; j++) {
    if (slope[j] < leastSlope) leastSlope = slope[j];
    if (slope[j] > mostSlope) mostSlope = slope[j];
  }
  return { from, step, count, W, slope, leastSlope, mostSlope };
}

/** Distance behind the head and change of mass per length at every boundary, touching ones merged. */
function boundaries(stretches: readonly Stretch[]): [number, number][] {
  const list: [number, number][] = [];
  const put = (distance: number, weight: number): void => {
    const previous = list[list.length - 1];
    if (previous && Math.abs(previous[0] - distance) < 1e-9) previous[1] += weight;
    else list.push([distance, weight]);
  };
  for (const { behind, length, mass } of stretches) {
    put(behind, mass / length);
    put(behind + length, -mass / length);
  }
  return list;
}

function addBoundary(
  primitives: ReturnType<typeof integrateLine>,
  start: number,
  step: number,
  count: number,
  weight: number,
  W: Float64Array,
  slope: Float64Array,
): void {
  const { x, P0, p0, p1, p2 } = primitives;
  const pieces = primitives.count;
  let i = pieceIndex(primitives, start, 0);
  for (let j = 0; j < count; j++) {
    const at = start + j * step;
    while (i + 1 < pieces && x[i + 1] <= at) i++;
    const t = at - x[i];
    W[j] += weight * (P0[i] + t * (p0[i] + t * (p1[i] / 2 + (t * p2[i]) / 3)));
    slope[j] += weight * (p0[i] + t * (p1[i] + t * p2[i]));
  }
}

/** W'(s), N; beyond the grid the end slope continues. */
export function slopeAt(potential: Potential, s: number): number {
  const { W, slope, step, count } = potential;
  const r = (s - potential.from) / step;
  if (r <= 0) return slope[0];
  if (r >= count - 1) return slope[count - 1];
  const j = Math.floor(r);
  return slopeIn(W[j + 1] - W[j], slope[j], slope[j + 1], step, (r - j) * step);
}

/** W(s), J; beyond the grid it continues with the end slope. */
export function potentialAt(potential: Potential, s: number): number {
  const { W, slope, step, count, from } = potential;
  const r = (s - from) / step;
  if (r <= 0) return W[0] + slope[0] * (s - from);
  if (r >= count - 1) return W[count - 1] + slope[count - 1] * (s - from - (count - 1) * step);
  const j = Math.floor(r);
  return W[j] + riseIn(W[j + 1] - W[j], slope[j], slope[j + 1], step, (r - j) * step);
}
