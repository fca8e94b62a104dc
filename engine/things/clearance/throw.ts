/**
 * How far a vehicle stands off the middle of a circular curve, in closed form.
 *
 *   inside, at the middle    v = R − √(R² − a²/4)
 *   outside, at the end      e = √(R² − a²/4 + (a/2 + o)²) − R
 *
 * R radius to the middle of the track, a between its guides (truck centres, or outer axles of a rigid frame), o overhang from
 * a guide to the end; all m. Range: 0 ≤ a ≤ 2R, o ≥ 0. Exact for a thin vehicle; the inner side of a wide one lies on a
 * smaller circle, which the swept path (swept.ts) follows. Source: chord geometry; the trade's a²/8R and (L² − a²)/8R are its
 * first terms.
 */
export function middleThrow(radius: number, guides: number): number {
  const half = guides / 2;
  return (half * half) / (radius + Math.sqrt(radius * radius - half * half));
}

export function endThrow(radius: number, guides: number, overhang: number): number {
  const half = guides / 2;
  // Without the difference of two nearly equal numbers.
  const more = overhang * (guides + overhang);
  return more / (Math.sqrt(radius * radius - half * half + (half + overhang) ** 2) + radius);
}
