/**
 * A straight scale from a stretch of figures to a stretch of the drawing. The scale library's own brings
 * colours and number formats with it: too much to load on a phone for one multiplication.
 */
export function scaleLinear(
  domain: readonly [number, number],
  range: readonly [number, number],
): (value: number) => number {
  const slope = (range[1] - range[0]) / (domain[1] - domain[0]);
  return (value) => range[0] + (value - domain[0]) * slope;
}
