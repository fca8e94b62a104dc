/**
 * A turnout laid out from what a tape tells: how its diverging track runs from the tips of the points to abreast of the frog.
 *
 *   N = ½·cot(F/2)      L = a + R·tan(F/2) + G·N      R·tan(F/2) + b = G·N
 *
 * F angle of the frog, N its number, G gauge, L lead (tips of the points to the frog's theoretical point), R radius of the middle of
 * the diverging track; a straight before its curve, b straight after it up to abreast of the frog; one of the two is nothing.
 * Curved all the way L = 2·G·N and R = 2·G·N²; a shorter lead bends sooner and leaves the frog straight, as built
 * with straight frogs. The middles of the two tracks cross G·N before the frog, whatever the points. Range: L > G·N. Points
 * with an angle at their tips stray from it by some mm between tips and frog, not beyond. Source: plane geometry; N as in
 * NMRA RP-12.7.
 */
import type { CurveElement } from './types.ts';

export interface Turnout {
  /** Of the frog, rad. */
  readonly angle: number;
  /** Tips of the points to the frog, along the track that goes on, m. */
  readonly lead: number;
  /** Of the middle of the diverging track, m. */
  readonly radius: number;
  /** Along its middle: straight, curve, straight up to abreast of the frog, m. */
  readonly before: number;
  readonly curve: number;
  readonly after: number;
}

export const numberOfFrog = (angle: number): number => 0.5 / Math.tan(angle / 2);
export const angleOfFrog = (number: number): number => 2 * Math.atan(0.5 / number);

/** From the tips of the points to the crossing of the middles of the tracks, m. */
export const crossingOf = ({ lead, angle }: Pick<Turnout, 'lead' | 'angle'>, gauge: number): number =>
  lead - gauge * numberOfFrog(angle);

/** Along the diverging track from the tips of the points to abreast of the frog, m. */
export const toFrog = ({ before, curve, after }: Turnout): number => before + curve + after;

/** undefined: so short a lead reaches no frog of this angle. */
export function turnoutByLead(gauge: number, angle: number, lead: number): Turnout | undefined {
  const beyond = gauge * numberOfFrog(angle);
  const crossing = lead - beyond;
  if (!(crossing > 0)) return undefined;
  const tangent = Math.min(crossing, beyond);
  const radius = tangent / Math.tan(angle / 2);
  return {
    angle,
    lead,
    radius,
    before: crossing - tangent,
    curve: radius * angle,
    after: beyond - tangent,
  };
}

/** undefined: so wide a curve does not come round to this angle before the frog. */
export function turnoutByRadius(gauge: number, angle: number, radius: number): Turnout | undefined {
  const [beyond, tangent] = [gauge * numberOfFrog(angle), radius * Math.tan(angle / 2)];
  return tangent > beyond * (1 + 1e-9) ? undefined : turnoutByLead(gauge, angle, beyond + tangent);
}

/** Curvature of the diverging track beyond that of the track that it leaves. */
export const turnoutCurves = ({ radius, before, curve }: Turnout, hand: 'left' | 'right'): CurveElement[] => {
  const k = (hand === 'left' ? 1 : -1) / radius;
  return [{ from: before, to: before + curve, startCurvature: k, endCurvature: k, gaugeWidening: 0 }];
};
