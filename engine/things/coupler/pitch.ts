/**
 * How far a bar or link between two pins must turn up or down against the two vehicles that it joins.
 *
 * Each frame is a straight line over the rail under its two guides (crest.ts), a pin lies a shank's length inside its end:
 *
 *   z = z₁ + (z₁ − z₂)·(o − h)/A     σ = (z₁ − z₂)/A
 *   s = (z′ − z)/L     sin β = (s − σ)/(1 + s·σ)     L = h + h′
 *
 * z₁, z₂ rail under the nearer and the farther guide, A between them, o overhang, h shank, z and z′ of the own and the other pin, all m;
 * σ slope of the frame toward its coupled end, s of the bar away from it; β rad, positive where the bar tips upward from it. Heights of the couplers and what
 * springs give add to z, what springs slope to σ. On a vertical curve of radius R both see, with m = A/2 + o,
 * β ≈ m/R + (q − q′ + Δ)/L downward on a crest, q = (o·(A + o) − 2·m·h)/(2·R), Δ how much higher the own coupler stands
 * (pitchOnCurve). Range: grades to 1 in 10 (chords taken as long as the track under them: frames
 * that tip bring high pins nearer: 0.15° at breaks of grade of 6 %).
 * Source: common engineering geometry.
 */
import type { Line } from '../line/types.ts';
import { type EndOnTrack, type Extreme, extremesOn, guidesOver, type Rail } from './crest.ts';

/** An end with the pin that its bar turns on. */
export interface PinnedEnd extends EndOnTrack {
  /** From the pin to the end, m. */
  readonly shank: number;
}

/** Of a bar against one frame: slopes, the bar's toward the other vehicle and the frame's toward its own end. */
export interface Slopes {
  readonly bar: number;
  readonly frame: number;
}

/** rad, positive upward; a quarter turn where the bar does not reach. */
export const pitchOf = ({ bar, frame }: Slopes): number =>
  Math.asin(Math.max(-1, Math.min(1, (bar - frame) / (1 + bar * frame))));

const mean = (of: readonly number[]): number => of.reduce((sum, d) => sum + d, 0) / of.length;

/** Height of the pin off the rail's own level, m, and slope of the frame toward its end, by chainage where the two meet. */
function pinOver(line: Line, end: PinnedEnd, way: 1 | -1): { readonly pin: Rail; readonly slope: Rail } {
  const [near, far] = guidesOver(line, end, way);
  const overhang = mean(end.near);
  const guides = mean(end.far) - overhang;
  const out = (overhang - end.shank) / guides;
  return {
    pin: (at) => {
      const z = near(at);
      return z + (z - far(at)) * out;
    },
    slope: (at) => (near(at) - far(at)) / guides,
  };
}

export interface Turn extends Slopes {
  /** What cant and twist may add either way, as a slope of the bar, ≥ 0. */
  readonly tilt: number;
  readonly at: number;
}

export type Turns = Readonly<Record<'up' | 'down', Turn>>;

/**
 * Where the bar tips farthest up and farthest down, against either vehicle, by the line alone.
 * @param tiltAt m by chainage: how far cant and twist set one pin above the other
 */
export function turnsOn(
  line: Line,
  ahead: PinnedEnd,
  behind: PinnedEnd,
  tiltAt?: (at: number) => number,
): Readonly<Record<'ahead' | 'behind', Turns>> {
  const bar = ahead.shank + behind.shank;
  const [front, back] = [pinOver(line, ahead, 1), pinOver(line, behind, -1)];
  const tilt = tiltAt && ((at: number): number => tiltAt(at) / bar);
  const against = (own: typeof front, its: typeof front): Turns => {
    const slopes = (at: number): Slopes => ({ bar: (its.pin(at) - own.pin(at)) / bar, frame: own.slope(at) });
    const turn = ({ at, tilt: t }: Extreme): Turn => ({ ...slopes(at), tilt: t, at });
    const { most, least } = extremesOn(line, ahead, behind, (at) => slopes(at).bar - slopes(at).frame, tilt);
    return { up: turn(most), down: turn(least) };
  };
  return { ahead: against(front, back), behind: against(back, front) };
}

/** One of two on a vertical curve, m. */
export interface OnCrest {
  readonly truckCentres: number;
  readonly overhang: number;
  readonly shank: number;
}

/** Both on a crest of radius R (of a sag, −R), rad, positive where the bar tips downward. @param higher own coupler above the other, m */
export function pitchOnCurve(radius: number, own: OnCrest, its: OnCrest, higher: number): number {
  const middle = ({ truckCentres: a, overhang: o }: OnCrest): number => a / 2 + o;
  const pin = (of: OnCrest): number =>
    (of.overhang * (of.truckCentres + of.overhang) - 2 * middle(of) * of.shank) / (2 * radius);
  return middle(own) / radius + (pin(own) - pin(its) + higher) / (own.shank + its.shank);
}
