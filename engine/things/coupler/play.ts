/**
 * What the play of flanges between the rails adds to a coupler's angle, where it is worst: both vehicles stand aslant in
 * their play, their coupled ends thrown to opposite sides.
 *
 *   Δβ = 2·p/g + (d + d′)/L        d = p·(1 + 2·(o − h)/g)
 *
 * p how far a guide stands off the middle of the track: half of play and gauge widening (m), g between the guides, o from
 * the nearer guide to the end, h shank (m), L both shanks; d aside of a pivot, d′ that of the other vehicle. A vehicle
 * without guides apart stands off, and not aslant. Range: p small against g and L. Source: common engineering geometry.
 */
import type { EndShape } from './bend.ts';

/** rad. @param play of both vehicles from side to side, m, ≥ 0 */
export function angleOfPlay(own: EndShape, its: EndShape, play: number): number {
  const off = play / 2;
  const aside = ({ guides, overhang, shank }: EndShape): number =>
    off * (guides > 0 ? 1 + (2 * Math.max(0, overhang - shank)) / guides : 1);
  const aslant = own.guides > 0 ? (2 * off) / own.guides : 0;
  return aslant + (aside(own) + aside(its)) / (own.shank + its.shank);
}
