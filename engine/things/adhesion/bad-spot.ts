/** A short greasy stretch that nobody knew of: what it adds to a stop that adhesion limits. */

/**
 * Distance by which one bad spot lengthens a stop, m.
 *
 *   Δs = L·µ·(1 − f)/(µ − i)        level track: L·(1 − f), at any speed
 *
 * length L of the spot m ≥ 0 · factor f, adhesion on the spot ÷ beside it · adhesion µ, mean over the whole train,
 * 0 where no wheel is braked · fall i of the grade, downhill positive. Infinity where µ does not hold the fall.
 * A train longer than the spot loses the same work, one group of wheels after the other. It is the most that a spot
 * adds: a stop that ends on it loses less. Source: energy, g·((µ − i)(s − L) + (µf − i)·L) = v²/2.
 */
export function badSpotAdds(length: number, factor: number, adhesion: number, fall: number): number {
  return adhesion > fall ? (length * adhesion * (1 - factor)) / (adhesion - fall) : Infinity;
}
