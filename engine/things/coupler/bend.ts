/**
 * How far the couplers of two neighbours must swing, from where both stand on the track.
 *
 * Each vehicle stands with two points of its frame (its guides: truck centres, or outer axles) over the middle of the
 * track, which makes its axis a chord of it. Its couplers turn on pivots, a shank's length inside its ends. A coupled
 * pair of them is held straight by the pull: a bar of length L = h₁ + h₂ from pivot to pivot, and the angle of either
 * coupler is that of the bar against its own vehicle's axis. Chords and bar have their true lengths; nothing is taken as
 * small. Source: common engineering geometry. Play of flanges between the rails is not in it (play.ts).
 */
import { type Plan, type Spot, spotAt } from '../line/plan.ts';
import type { Vehicle } from '../vehicle/types.ts';

/** One vehicle's end as its coupling has it, m. */
export interface EndShape {
  /** Between the two guides, ≥ 0; 0: the axis lies along the track. */
  readonly guides: number;
  /** From the nearer guide to the vehicle's end. */
  readonly overhang: number;
  /** From the pivot to the end, > 0. */
  readonly shank: number;
}

export interface PairShape {
  /** Rear end of the vehicle ahead, front end of the one behind. */
  readonly ahead: EndShape;
  readonly behind: EndShape;
}

/**
 * Sines of the angles of both couplers, positive where a pull draws that end to the left. ±1 where it would have to
 * swing a quarter turn or more, or where the bar cannot reach from pivot to pivot.
 */
export interface Bend {
  ahead: number;
  behind: number;
}

/** From the front end to the two points of the frame that stay over the track. */
export function guidesOf({ groups }: Pick<Vehicle, 'groups'>): readonly [number, number] {
  const driven = groups.filter((g) => g.driven);
  // Trucks at the ends of such an engine swing aside; its driving wheels hold the frame.
  const holding = groups.length > 2 && driven.length > 0 ? driven : groups;
  const [first, last] = [holding[0], holding[holding.length - 1]];
  return first === last
    ? [first.at - first.wheelBase / 2, first.at + first.wheelBase / 2]
    : [first.at, last.at];
}

export function rearEnd(vehicle: Vehicle, shank: number): EndShape {
  const [front, rear] = guidesOf(vehicle);
  return { guides: rear - front, overhang: vehicle.length - rear, shank };
}

export function frontEnd(vehicle: Vehicle, shank: number): EndShape {
  const [front, rear] = guidesOf(vehicle);
  return { guides: rear - front, overhang: front, shank };
}

/** Pairs of equal shape bend alike. */
export const keyOf = ({ ahead, behind }: PairShape): string =>
  [ahead, behind].map((e) => `${e.guides} ${e.overhang} ${e.shank}`).join(' ');

/** Chords and bar are found to this, m: 1e-7 rad on the shortest bar. */
const CLOSE = 1e-9;
const TRIES = 40;

/** Spots and lengths along the track, kept from one place to the next: it is found sooner from there. */
export interface Placing {
  readonly spots: readonly [Spot, Spot, Spot, Spot];
  chordAhead: number;
  apart: number;
  chordBehind: number;
}

const spot = (): Spot => ({ x: 0, y: 0, cos: 1, sin: 0 });
const looseEnds = ({ ahead, behind }: PairShape) => ({
  chordAhead: ahead.guides,
  apart: ahead.overhang + behind.overhang,
  chordBehind: behind.guides,
});

export const placing = (pair: PairShape): Placing => ({
  spots: [spot(), spot(), spot(), spot()],
  ...looseEnds(pair),
});

/**
 * @param at chainage at which the end of the vehicle ahead would lie on straight track, m: its rear guide stands an
 * overhang ahead of it
 */
export function bendAt(plan: Plan, pair: PairShape, at: number, place: Placing, into: Bend): void {
  if (tried(plan, pair, at, place, into)) return;
  // Once more from where a straight track would have them.
  Object.assign(place, looseEnds(pair));
  if (tried(plan, pair, at, place, into)) return;
  Object.assign(place, looseEnds(pair));
  into.ahead = 1;
  into.behind = 1;
}

/** False where it does not settle. */
function tried(plan: Plan, { ahead, behind }: PairShape, at: number, place: Placing, into: Bend): boolean {
  const [front, rear, next, last] = place.spots;
  const guide = at + ahead.overhang;
  const [inner, outer] = [ahead.overhang - ahead.shank, behind.overhang - behind.shank];
  const bar = ahead.shank + behind.shank;
  spotAt(plan, guide, rear);
  for (let i = 0; i < TRIES; i++) {
    spotAt(plan, guide + place.chordAhead, front);
    spotAt(plan, guide - place.apart, next);
    spotAt(plan, guide - place.apart - place.chordBehind, last);
    const short = axisOf(rear, front, ahead.guides);
    const [ux, uy] = [axis.x, axis.y];
    const shortBehind = axisOf(last, next, behind.guides);
    const [vx, vy] = [axis.x, axis.y];
    const wx = next.x + vx * outer - rear.x + ux * inner;
    const wy = next.y + vy * outer - rear.y + uy * inner;
    const reach = Math.hypot(wx, wy);
    if (Math.abs(short) < CLOSE && Math.abs(shortBehind) < CLOSE && Math.abs(bar - reach) < CLOSE) {
      into.ahead = sine(wx * -uy + wy * ux, wx * ux + wy * uy, reach);
      into.behind = sine(wx * vy - wy * vx, wx * vx + wy * vy, reach);
      return true;
    }
    place.chordAhead += short;
    place.chordBehind += shortBehind;
    // A bar that lies aslant gains more along the track than it lacks.
    place.apart += (bar - reach) / Math.max(0.2, -(wx * ux + wy * uy) / reach);
  }
  return false;
}

/** Of the bar to its left of the axis; ±1 from a quarter turn on. */
const sine = (aside: number, along: number, reach: number): number =>
  along < 0 ? aside / reach : Math.sign(aside) || 1;

const axis = { x: 1, y: 0 };

/** Writes the axis from one guide to the other into `axis`; what the chord lacks of its length. */
function axisOf(rear: Spot, front: Spot, guides: number): number {
  if (guides === 0) {
    axis.x = rear.cos;
    axis.y = rear.sin;
    return 0;
  }
  const [dx, dy] = [front.x - rear.x, front.y - rear.y];
  const chord = Math.hypot(dx, dy);
  axis.x = dx / chord;
  axis.y = dy / chord;
  return guides - chord;
}
