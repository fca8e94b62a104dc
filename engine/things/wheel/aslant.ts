/**
 * How much more room between the rails a wheelset takes that stands aslant.
 *
 *   b(z) = √(2·r·z + z²)      e = max over 0 ≤ z ≤ h of  2·(b(z)·sin α − z·cot δ·cos α) − w·(1 − cos α)
 *
 * r radius on the tread, h height of the flange, z depth below the tread, b half of how long the flange is at that depth along the
 * rail (2·b(h) is the lap of the flange); δ angle of the flange against the level, so that it is thinner by z·cot δ at that depth;
 * w over both flanges; α how far the axle stands aslant of the track: sin α = (a/2)/R of the outer axles of a rigid base a in a
 * curve R. All m, rad. Range: r, h, w > 0, 0 < δ ≤ π/2, 0 ≤ α < π/2; below nothing it takes less than it does straight. It goes round
 * where e ≤ play with the widening there. Source: geometry of a disc with a coned flange; the lap 2·√(D·h + h²) as in published
 * rules of gauge widening.
 */
export interface FlangeShape {
  readonly radius: number;
  readonly height: number;
  readonly angle: number;
}

export function aslantRoom({ radius, height, angle }: FlangeShape, over: number, sine: number): number {
  const cosine = Math.sqrt(1 - sine * sine);
  const relief = cosine / Math.tan(angle);
  const at = (z: number): number => Math.sqrt(2 * radius * z + z * z) * sine - z * relief;
  // Its slope, sin α·(r + z)/b, falls to sin α as z grows: with less relief than that the tip stands out farthest. Else
  // z + r = r·cot δ·cos α/√((cot δ·cos α)² − sin² α).
  const farthest =
    relief <= sine ? height : (radius * relief) / Math.sqrt(relief * relief - sine * sine) - radius;
  // Rounding may leave it a hair above the tread.
  return 2 * at(Math.max(0, Math.min(height, farthest))) - over * (1 - cosine);
}
