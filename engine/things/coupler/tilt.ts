/**
 * How far cant and twist tilt the faces of two coupled ends apart.
 *
 * A body lies across the track as the mean of its two guides (of a truck, the mean under its axles): φ = c/w. Two faces whose
 * middles are level with one another come apart at one edge by
 *
 *   t = |φ₁ − φ₂|·(y + f/2)
 *
 * c cant there, w between the points where the wheels bear on the rails, y how far the two meet aside of the middle of the track
 * (end throw in a curve), f how wide the narrower face is; all m. Twist of the track that the survey's cants do not show counts
 * where it is more: |φ₁ − φ₂| ≥ g·D/w, g the greatest twist (m per m), D between the middles of the two vehicles. Range: cants
 * small against w. Springs that lean a body, and heights of the middle of the track where cant runs off, are not in it. Source:
 * common engineering geometry.
 */
import { endThrow } from '../clearance/throw.ts';
import { cantAt, curvatureAt } from '../line/geometry.ts';
import type { Line } from '../line/types.ts';
import type { EndOnTrack } from './crest.ts';

/** At the edge of the faces, m. @param roll of one body against the other, rad */
export const edgeApart = (roll: number, aside: number, face: number): number =>
  Math.abs(roll) * (aside + face / 2);

/** Of one body, rad: right side higher. @param way +1 ahead of where the two meet, −1 behind */
function rollAt(line: Line, { near, far }: EndOnTrack, way: 1 | -1, at: number): number {
  const mean = (axles: readonly number[]): number =>
    axles.reduce((sum, d) => sum + cantAt(line, at + way * d), 0) / axles.length;
  return (mean(near) + mean(far)) / 2 / line.contactWidth;
}

/** rad, by chainage where the two meet. */
export const rollBetween = (line: Line, ahead: EndOnTrack, behind: EndOnTrack, at: number): number =>
  rollAt(line, ahead, 1, at) - rollAt(line, behind, -1, at);

const middle = (of: readonly number[]): number => of.reduce((sum, d) => sum + d, 0) / of.length;

/** How far an end hangs aside in a curve, m. */
function asideIn({ near, far }: EndOnTrack, curvature: number): number {
  const overhang = middle(near);
  const guides = middle(far) - overhang;
  return curvature === 0 || guides >= 2 / curvature ? 0 : endThrow(1 / curvature, guides, overhang);
}

/** m by chainage; undefined where the line states neither cant nor twist. @param face width of the narrower one, m */
export function tiltOver(
  line: Line,
  ahead: EndOnTrack,
  behind: EndOnTrack,
  face: number,
): ((at: number) => number) | undefined {
  const { twist = 0, cants, contactWidth } = line;
  if (twist === 0 && cants.every((k) => k.cant === cants[0].cant)) return undefined;
  const apart = (middle(ahead.near) + middle(ahead.far) + middle(behind.near) + middle(behind.far)) / 2;
  const least = (twist * apart) / contactWidth;
  return (at) => {
    const roll = Math.max(least, Math.abs(rollBetween(line, ahead, behind, at)));
    const reach = [0, middle(ahead.far), -middle(behind.far)];
    const curvature = Math.max(...reach.map((d) => Math.abs(curvatureAt(line, at + d))));
    return edgeApart(roll, Math.max(asideIn(ahead, curvature), asideIn(behind, curvature)), face);
  };
}
