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

/** Where the next longer of the steps 1, 2, 5, 10 lies nearer, in proportion: the geometric means between them. */
const ROUND = [
  [Math.sqrt(50), 10],
  [Math.sqrt(10), 5],
  [Math.sqrt(2), 2],
] as const;

/** About so many round figures between two, both included where they are round: what an axis is ruled with. */
export function roundFigures(from: number, to: number, count: number): number[] {
  const rough = (to - from) / count;
  if (!(rough > 0)) return from === to ? [from] : [];
  const power = Math.floor(Math.log10(rough));
  const factor = ROUND.find(([least]) => rough / 10 ** power >= least)?.[1] ?? 1;
  // Steps below one are divided by, not multiplied with, so that 0.3 is no 0.30000000000000004.
  const [times, parts] = power < 0 ? [factor, 10 ** -power] : [factor * 10 ** power, 1];
  const at = (n: number): number => (n * times) / parts;
  let first = Math.round((from * parts) / times);
  if (at(first) < from) first++;
  let last = Math.round((to * parts) / times);
  if (at(last) > to) last--;
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => at(first + i));
}
