/**
 * Plane figures by their corners: does one cross itself, does one lie within another, and how far from its edge.
 *
 * Corners in order round, the last joined to the first; m. Range: three corners or more; a point on an edge counts as within. Source:
 * plane geometry (crossing number; distance of a point from a segment).
 */
export interface Corner {
  readonly x: number;
  readonly y: number;
}

export type Polygon = readonly Corner[];

const edge = (of: Polygon, i: number): readonly [Corner, Corner] => [of[i], of[(i + 1) % of.length]];

/** Above nothing where c lies to the left of the way from a to b. */
const turn = (a: Corner, b: Corner, c: Corner): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** Each with its ends to either side of the other: touching alone does not cross. */
function cross([a, b]: readonly [Corner, Corner], [c, d]: readonly [Corner, Corner]): boolean {
  const [p, q, r, s] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  return p * q < 0 && r * s < 0;
}

/** Two edges that cross, by the corners that they begin at; undefined: none do. */
export function crossesItself(of: Polygon): readonly [number, number] | undefined {
  for (let i = 0; i < of.length; i++)
    for (let k = i + 1; k < of.length; k++) if (cross(edge(of, i), edge(of, k))) return [i, k];
  return undefined;
}

/** m from a point to the nearest edge. */
export function toEdge(of: Polygon, p: Corner): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < of.length; i++) {
    const [a, b] = edge(of, i);
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const length = dx * dx + dy * dy;
    const share = length === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length));
    least = Math.min(least, Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy));
  }
  return least;
}

function within(of: Polygon, p: Corner): boolean {
  let odd = false;
  for (let i = 0; i < of.length; i++) {
    const [a, b] = edge(of, i);
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) odd = !odd;
  }
  return odd;
}

/** m to the edge; below nothing outside. */
export const depthIn = (of: Polygon, p: Corner): number => (within(of, p) ? 1 : -1) * toEdge(of, p);

export interface Room {
  /** Least left between the two, m; below nothing: how far the inner one stands out. */
  readonly left: number;
  /** Where. */
  readonly at: Corner;
}

/** A figure inside another: distances are least at a corner of one of the two. */
export function roomIn(outer: Polygon, inner: Polygon): Room {
  const corners = [
    ...inner.map((at) => ({ left: depthIn(outer, at), at })),
    // A corner of the outer one that lies in the inner one is cut off by as much.
    ...outer.map((at) => ({ left: -depthIn(inner, at), at })),
  ];
  const between = inner.flatMap((_, i) => betweenCrossings(edge(inner, i), outer));
  return [...corners, ...between.map((at) => ({ left: depthIn(outer, at), at }))].reduce((a, b) =>
    b.left < a.left ? b : a,
  );
}

/** Midway between where an edge crosses those of the other: a spike through a figure has no corner in it, nor it one out of it. */
function betweenCrossings([a, b]: readonly [Corner, Corner], other: Polygon): Corner[] {
  const shares = other.flatMap((_, k) => {
    const [c, d] = edge(other, k);
    return cross([a, b], [c, d]) ? [turn(c, d, a) / (turn(c, d, a) - turn(c, d, b))] : [];
  });
  const sorted = shares.sort((p, q) => p - q);
  return sorted.slice(1).map((to, i) => {
    const share = (sorted[i] + to) / 2;
    return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
  });
}

/** Of one side of the middle, from the middle to the middle: the other side alike. Whole ones stay. */
export function wholeFigure(of: Polygon): Polygon {
  if (of.some((p) => p.x < 0)) return of;
  return [
    ...of,
    ...of
      .filter((p) => p.x > 0)
      .map(({ x, y }) => ({ x: -x, y }))
      .reverse(),
  ];
}
