/**
 * The swept path: how far a vehicle reaches to either side of the track's middle as it passes a place.
 *
 * The vehicle stands with two points of its frame (its guides) on the track, so that its axis is a chord of it; its box lies
 * along that axis. At a chainage s the track's normal n is drawn through the middle C(s); what of it lies inside the box, for
 * every place of the vehicle, is the reach there:
 *
 *   W(s) = max over places of t,  C(s) + t·n inside the box
 *
 * Chords have their true lengths, nothing is taken as small; transitions, S-curves and ends of curves are in it. Play of
 * the flanges moves each guide sideways by its own amount. Source: common engineering geometry; on one circle it is that of
 * throw.ts.
 */
import { highest } from '../../base/numerics/highest.ts';
import { type Plan, type Spot, spotAt } from '../line/plan.ts';

/** Of the vehicle's axes, m: along, forward of the rear guide; across, to the left. */
export interface Box {
  readonly rear: number;
  readonly front: number;
  readonly right: number;
  readonly left: number;
}

export interface SweptShape {
  /** Between the two guides, ≥ 0; 0: the axis lies along the track. */
  readonly guides: number;
  readonly box: Box;
}

export type Side = 'left' | 'right';

/** How far the guides stand to the left of the track's middle, m. */
export interface Aside {
  readonly rear: number;
  readonly front: number;
}

/** Midway between the rails. */
export const MIDDLE: Aside = { rear: 0, front: 0 };

/** Between the places of the vehicle that are looked at, m; between them the most is sought by golden section. */
export const STEP = 0.1;
/** Between two of them the reach cannot rise by more: a vehicle stands nowhere more aslant than one in two. */
const RISE = STEP / 2;
const CUTS = 30;
/** How near along the track a corner is brought to the place that it passes, m. */
const ABREAST = 1e-10;
const HALVINGS = 60;
/** Three places with no more between them are a stretch along which the vehicle reaches alike, m. */
const ALIKE = 1e-12;
/** Cosine of the most that a vehicle beside a place points away from the track there. */
export const FACING = 0.2;
/** Chords are found to this, m. */
const CLOSE = 1e-10;
const TRIES = 60;
/** A chord is shorter than the track under it: by no more than this on any curve that a vehicle can stand in. */
const BEND = 1.25;

/** Chainages before and behind a place that a vehicle may have its rear guide at, and the plan must cover, m. */
export const farthest = ({ guides, box }: SweptShape): number =>
  BEND * (Math.max(guides, box.front) + Math.max(0, -box.rear)) + 2 * STEP;

/** How far before and behind a place its rear guide may stand with the vehicle beside it, m. */
export const window = ({ box }: SweptShape): readonly [number, number] => [
  BEND * Math.max(box.front, 0) + STEP,
  BEND * Math.max(-box.rear, 0) + STEP,
];

/**
 * Most reach to a side at chainage s, m from the middle of the track; −Infinity where the box is nowhere beside it.
 * undefined: there the vehicle cannot stand on the track at all.
 */
export function reachAt(
  plan: Plan,
  shape: SweptShape,
  s: number,
  side: Side,
  aside: Aside = MIDDLE,
): number | undefined {
  const { box } = shape;
  const [back, ahead] = window(shape);
  const [first, last] = [s - back, s + ahead];
  const count = Math.ceil((last - first) / STEP) + 1;
  const way = side === 'left' ? 1 : -1;
  const place = placeAt(plan, s);
  const stand = standing(shape.guides);
  let stands = true;
  const at = (rear: number): number => {
    if (!standOn(plan, shape.guides, rear, aside, stand)) stands = false;
    return across(stand, box, place, way);
  };
  const looked = Array.from({ length: count }, (_, j) => at(first + j * STEP));
  const top = looked.reduce((a, b) => Math.max(a, b), -Infinity);
  if (top === -Infinity) return stands ? top : undefined;
  const corner = (along: number): number => {
    const beside = (rear: number): Offset => {
      if (!standOn(plan, shape.guides, rear, aside, stand)) stands = false;
      return offsetOf(stand, along, way > 0 ? box.left : box.right, place);
    };
    return way * beside(crossing((rear) => beside(rear).along, first, last)).aside;
  };
  let most = Math.max(top, corner(box.rear), corner(box.front));
  looked.forEach((here, j) => {
    const [before, after] = [looked[j - 1] ?? -Infinity, looked[j + 1] ?? -Infinity];
    if (here < top - RISE || here < before || here < after) return;
    if (here - before < ALIKE && here - after < ALIKE) return;
    const middle = first + j * STEP;
    most = Math.max(most, highest(at, middle - STEP, middle + STEP, CUTS).value);
  });
  return stands ? most : undefined;
}

/** Where a growing function passes nothing; the nearer bound where it does not. By its chord (Illinois), every third time by halving. */
function crossing(f: (x: number) => number, low: number, high: number): number {
  let [from, to] = [low, high];
  let [below, above] = [f(from), f(to)];
  if (!(below < 0)) return from;
  if (!(above >= 0)) return to;
  for (let i = 0; i < HALVINGS; i++) {
    const x = i % 3 === 2 ? (from + to) / 2 : from + ((to - from) * below) / (below - above);
    const here = f(x);
    if (Math.abs(here) < ABREAST) return x;
    if (here < 0) {
      [from, below] = [x, here];
      above /= 2;
    } else {
      [to, above] = [x, here];
      below /= 2;
    }
  }
  return (from + to) / 2;
}

/** Of a point of the vehicle from a place of the track, along it and to its left, m. */
interface Offset {
  readonly along: number;
  readonly aside: number;
}

function offsetOf({ x, y, ux, uy }: Stand, along: number, across: number, place: Place): Offset {
  const dx = x + along * ux - across * uy - place.x;
  const dy = y + along * uy + across * ux - place.y;
  return { along: dx * place.ny - dy * place.nx, aside: dx * place.nx + dy * place.ny };
}

/**
 * How far a point of the vehicle lies to the left of the track's middle, and abreast of which chainage; undefined: it cannot stand.
 *
 * @param rear chainage of the rear guide · @param along forward of it, across to the left of the axis, m
 */
export function pointBeside(
  plan: Plan,
  shape: SweptShape,
  rear: number,
  point: { readonly along: number; readonly across: number },
  aside: Aside,
): { readonly at: number; readonly aside: number } | undefined {
  const stand = standing(shape.guides);
  if (!standOn(plan, shape.guides, rear, aside, stand)) return undefined;
  let at = rear + point.along;
  let off = offsetOf(stand, point.along, point.across, placeAt(plan, at));
  // Abreast of it the point lies on the track's normal.
  for (let i = 0; i < TRIES && Math.abs(off.along) > 1e-9; i++) {
    at += off.along;
    off = offsetOf(stand, point.along, point.across, placeAt(plan, at));
  }
  return { at, aside: off.aside };
}

export interface Place {
  readonly x: number;
  readonly y: number;
  /** Of the track's normal, to the left. */
  readonly nx: number;
  readonly ny: number;
}

const spot = (): Spot => ({ x: 0, y: 0, cos: 1, sin: 0 });

export function placeAt(plan: Plan, s: number): Place {
  const at = spot();
  spotAt(plan, s, at);
  return { x: at.x, y: at.y, nx: -at.sin, ny: at.cos };
}

export interface Stand {
  readonly rear: Spot;
  readonly front: Spot;
  /** Along the track from guide to guide, kept from one place to the next. */
  along: number;
  /** Rear guide, and the way of the axis. */
  x: number;
  y: number;
  ux: number;
  uy: number;
}

export const standing = (guides: number): Stand => ({
  rear: spot(),
  front: spot(),
  along: guides,
  x: 0,
  y: 0,
  ux: 1,
  uy: 0,
});

/** False where the track turns back within the length of the vehicle. */
export function standOn(plan: Plan, guides: number, at: number, aside: Aside, stand: Stand): boolean {
  const { rear, front } = stand;
  spotAt(plan, at, rear);
  stand.x = rear.x - rear.sin * aside.rear;
  stand.y = rear.y + rear.cos * aside.rear;
  if (guides === 0) {
    stand.ux = rear.cos;
    stand.uy = rear.sin;
    return true;
  }
  for (let i = 0; i < TRIES; i++) {
    spotAt(plan, at + stand.along, front);
    const dx = front.x - front.sin * aside.front - stand.x;
    const dy = front.y + front.cos * aside.front - stand.y;
    const chord = Math.hypot(dx, dy);
    stand.ux = dx / chord;
    stand.uy = dy / chord;
    const short = guides - chord;
    if (Math.abs(short) < CLOSE) return true;
    stand.along += short;
    if (stand.along > BEND * guides) break;
  }
  stand.along = guides;
  return false;
}

/** Where the normal leaves the box, m from the middle of the track to that side; −Infinity where it passes by. */
function across({ x, y, ux, uy }: Stand, box: Box, place: Place, way: 1 | -1): number {
  const { nx, ny } = place;
  const facing = ux * ny - uy * nx;
  // A vehicle that stands across the normal's other end, as round a tight loop, is not beside this place.
  if (facing < FACING) return -Infinity;
  const dx = place.x - x;
  const dy = place.y - y;
  const along = dx * ux + dy * uy;
  const aside = dy * ux - dx * uy;
  const forward = nx * ux + ny * uy;
  let low = (box.right - aside) / facing;
  let high = (box.left - aside) / facing;
  if (Math.abs(forward) < 1e-15) {
    if (along < box.rear || along > box.front) return -Infinity;
  } else {
    const rear = (box.rear - along) / forward;
    const front = (box.front - along) / forward;
    low = Math.max(low, Math.min(rear, front));
    high = Math.min(high, Math.max(rear, front));
  }
  if (low > high) return -Infinity;
  return way > 0 ? high : -low;
}
