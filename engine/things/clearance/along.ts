/**
 * The swept path of many places at once: the vehicle is stood along the track every tenth of a metre, and each stand looked at from
 * every place that it is beside. What lies between the stands follows by a parabola through three of them, to a twentieth of a millimetre where a curve of 6 m begins without easement, the
 * nearer the gentler (`swept.ts` seeks the same at one place, to the last digit).
 */
import type { Plan } from '../line/plan.ts';
import {
  type Aside,
  FACING,
  type Place,
  placeAt,
  type Side,
  STEP,
  type SweptShape,
  standing,
  standOn,
  window,
} from './swept.ts';

/** A place looks at stands up to one beyond its window: those are laid, and no rounding leaves one out, m. */
const AROUND = 1.001 * STEP;

/** Stands of the look that is under way: one run of figures for all of them, since there are thousands of looks. */
let scratch = new Float64Array(1024);

/**
 * Most reach to a side at each of the places, m from the middle of the track; −Infinity where the vehicle is nowhere beside it.
 * A number: which of the places is the first beside which it cannot stand.
 *
 * By parabolas through stands a step apart: within 0.05 mm of one place at a time, but for places beside which the curvature
 * jumps, where it was up to 0.4 mm. It picks a place; what is told of that is sought there to the last digit.
 *
 * @param places chainages that grow
 */
export function reachesAlong(
  plan: Plan,
  shape: SweptShape,
  places: readonly number[],
  side: Side,
  aside: Aside,
): readonly number[] | number {
  const { box, guides } = shape;
  const [back, ahead] = window(shape);
  const begins = places[0] - back;
  const count = Math.ceil((places[places.length - 1] + ahead - begins) / STEP) + 1;
  // Rear guide and way of the axis, four figures a stand: a long line has many.
  if (scratch.length < 4 * count) scratch = new Float64Array(8 * count);
  const stands = scratch;
  const stand = standing(guides);
  let near = 0;
  for (let j = 0; j < count; j++) {
    const rear = begins + j * STEP;
    while (places[near] + ahead < rear - AROUND) near++;
    if (rear < places[near] - back - AROUND) continue;
    if (!standOn(plan, guides, rear, aside, stand))
      return Math.max(
        0,
        places.findIndex((s) => s + ahead >= rear),
      );
    stands[4 * j] = stand.x;
    stands[4 * j + 1] = stand.y;
    stands[4 * j + 2] = stand.ux;
    stands[4 * j + 3] = stand.uy;
  }
  const way = side === 'left' ? 1 : -1;
  const edge = way > 0 ? box.left : box.right;
  const most: number[] = [];
  for (const s of places) {
    const place = placeAt(plan, s);
    const first = Math.max(0, Math.floor((s - back - begins) / STEP));
    const last = Math.min(count - 1, Math.ceil((s + ahead - begins) / STEP));
    most.push(
      Math.max(
        ofSide(stands, first, last, box, edge, place, way),
        atCorner(stands, first, last, box.rear, edge, place, way),
        atCorner(stands, first, last, box.front, edge, place, way),
      ),
    );
  }
  return most;
}

/** Where the normal leaves the box by its side, at its most; by an end it leaves it nearer than by the corner. */
function ofSide(
  stands: Float64Array,
  first: number,
  last: number,
  { rear, front }: SweptShape['box'],
  edge: number,
  { x, y, nx, ny }: Place,
  way: 1 | -1,
): number {
  let most = -Infinity;
  let before = -Infinity;
  let middle = -Infinity;
  for (let j = 4 * first; j <= 4 * last; j += 4) {
    const ux = stands[j + 2];
    const uy = stands[j + 3];
    const facing = ux * ny - uy * nx;
    let here = -Infinity;
    if (facing >= FACING) {
      const dx = x - stands[j];
      const dy = y - stands[j + 1];
      const t = (edge - dy * ux + dx * uy) / facing;
      const along = dx * ux + dy * uy + t * (nx * ux + ny * uy);
      if (along >= rear && along <= front) here = way * t;
    }
    if (here > most) most = here;
    // The top of the parabola through three stands, the middle one the greatest.
    if (middle >= before && middle >= here && before > -Infinity && here > -Infinity) {
      const bend = before - 2 * middle + here;
      if (bend < 0) most = Math.max(most, middle - (here - before) ** 2 / (8 * bend));
    }
    before = middle;
    middle = here;
  }
  return most;
}

/** How far a corner of the vehicle stands out as it passes the place, by a parabola through the stands around that; else −Infinity. */
function atCorner(
  stands: Float64Array,
  first: number,
  last: number,
  along: number,
  edge: number,
  { x, y, nx, ny }: Place,
  way: 1 | -1,
): number {
  const off = (j: number, ax: number, ay: number): number => {
    const ux = stands[4 * j + 2];
    const uy = stands[4 * j + 3];
    const dx = stands[4 * j] + along * ux - edge * uy - x;
    const dy = stands[4 * j + 1] + along * uy + edge * ux - y;
    return dx * ax + dy * ay;
  };
  // It passes the place but once: found by halving.
  let [low, high] = [first, last];
  if (off(low, ny, -nx) >= 0 || off(high, ny, -nx) < 0) return -Infinity;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (off(middle, ny, -nx) < 0) low = middle;
    else high = middle;
  }
  const third = high < last ? high + 1 : Math.max(first, low - 1);
  const [a, b, c] = [off(low, ny, -nx), off(high, ny, -nx), off(third, ny, -nx)];
  const [p, q, r] = [off(low, nx, ny), off(high, nx, ny), off(third, nx, ny)];
  return (
    way *
    ((p * b * c) / ((b - a) * (c - a)) +
      (q * a * c) / ((a - b) * (c - b)) +
      (r * a * b) / ((a - c) * (b - c)))
  );
}
