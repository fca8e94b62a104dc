/**
 * Wheels braked harder than the rail holds: what they still do, and what the driver does about it.
 *
 * A driver who graduates his brake eases it when wheels slide, and puts it on anew. Adhesion along one rail varies by
 * ±δ about its mean, so with r = B/(µ·N) the share of the way on which the wheels slide is
 *
 *   p = (r − 1 + δ)/(2δ), held in 0 … 1
 *   until he notices   F = µ·N·[(1 − p)·min(r, 1) + p·min(r, s(v))]
 *   from then on       F = µ·N·[(1 − p)·min(r, 1) + p·u]
 *
 * A wheel that the rail would turn with more than its brake asks rolls again, so that sliding never holds more than rolling.
 *
 * B force of the brake (N), µ adhesion, N load (N), s(v) friction of a skidding wheel ÷ adhesion, u share of adhesion
 * that easing and braking anew uses. One handle eases all that hangs on it: its hardest braked group sets p and the
 * factor u/r for them all. The law has no step: 1 % more brake changes the force by 3 % at most once it is noticed.
 * What came on by itself is eased by nobody: it locks where B > µ·N at the speed of the moment and keeps s(v)·µ·N.
 * Sources and check values: tests/truth/adhesion.
 */

/**
 * Adhesion along one rail against its mean: most readings of the road tests at Absecon 1913 lie within 15 % of it, all
 * of them within 49 %.
 */
export const RAIL_VARIES = 0.25;

/** Share of the way on which a group slides. @param ratio brake ÷ what adhesion holds, ≥ 0 */
export function slidingShare(ratio: number): number {
  const p = (ratio - 1 + RAIL_VARIES) / (2 * RAIL_VARIES);
  return Math.min(1, Math.max(0, p));
}

/** What a group does before anybody eases it ÷ what adhesion holds. @param skid friction of a skidding wheel ÷ adhesion */
export function untilNoticed(ratio: number, skid: number): number {
  const p = slidingShare(ratio);
  return (1 - p) * Math.min(ratio, 1) + p * Math.min(ratio, skid);
}
