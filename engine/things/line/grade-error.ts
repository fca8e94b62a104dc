/** How far a surveyed grade may be from the true one, by the way its heights were taken. */

/**
 * Error of a grade between two points whose heights were taken each by itself: √2·e/L.
 *
 * heightError e m, of one height · length L m > 0 between the points. For receivers and barometers. Errors of
 * neighbouring points are partly the same in truth, so it is an upper bound. Source: sum of independent errors.
 */
export function gradeError(heightError: number, length: number): number {
  return (Math.SQRT2 * heightError) / length;
}

/**
 * Error of a grade between two points of one line of levels: c·√(L/1000)/L.
 *
 * misclosure c m per √km that the levelling kept to · length L m > 0. Rounding of the staff readings and the rail's
 * own waviness come on top. Source: random errors of levelling grow with the root of the way.
 */
export function levelledGradeError(misclosure: number, length: number): number {
  return (misclosure * Math.sqrt(length / 1000)) / length;
}
