/** Angle of a coupler in a curve, in closed form. */

/** One of two neighbours, m. */
export interface Standing {
  /** Between truck centres (or outer axles in a rigid frame), ≥ 0. */
  readonly truckCentres: number;
  /** From the truck centre to the end that is coupled. */
  readonly overhang: number;
  /** From the coupler's pivot to the end, > 0. */
  readonly shank: number;
}

/**
 * Angle of a coupler against the axis of its own vehicle, both vehicles in one curve of constant radius, rad:
 *
 *   β₁ = π/2 + atan(p₁/d₁) − acos((ρ₁² + L² − ρ₂²)/(2·ρ₁·L))
 *   d = √(R² − A²/4)   p = A/2 + o − h   ρ = √(d² + p²)   L = h₁ + h₂
 *
 * R radius m, 2R > A · A truck centres, o overhang, h shank, m · d from the curve's centre to the axis, p along it to the
 * pivot, ρ pivot to the curve's centre. Positive: a pull draws the end inward. NaN where the bar cannot reach.
 * Alike, β ≈ (p + L/2)/R. Source: common engineering geometry.
 */
export function couplerAngle(radius: number, own: Standing, other: Standing): number {
  const [mine, its] = [pivotOf(radius, own), pivotOf(radius, other)];
  const bar = own.shank + other.shank;
  const atPivot = Math.acos((mine.out ** 2 + bar ** 2 - its.out ** 2) / (2 * mine.out * bar));
  return Math.PI / 2 + Math.atan(mine.along / mine.axis) - atPivot;
}

function pivotOf(radius: number, { truckCentres, overhang, shank }: Standing) {
  const axis = Math.sqrt(radius ** 2 - truckCentres ** 2 / 4);
  const along = truckCentres / 2 + overhang - shank;
  return { axis, along, out: Math.hypot(axis, along) };
}
