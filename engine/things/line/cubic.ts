/** The cubic through both ends of a cell with their slopes: how a table is read between its nodes. */

/** Slope of the cell's cubic at x. */
export function slopeIn(rise: number, s0: number, s1: number, step: number, x: number): number {
  const t = x / step;
  return s0 * (1 - t) * (1 - 3 * t) + s1 * t * (3 * t - 2) + (rise / step) * 6 * t * (1 - t);
}

/** Rise of the cell's cubic from its left node to x. */
export function riseIn(rise: number, s0: number, s1: number, step: number, x: number): number {
  const t = x / step;
  const u = 1 - t;
  return rise * t * t * (3 - 2 * t) + step * t * u * (s0 * u - s1 * t);
}
