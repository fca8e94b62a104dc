/**
 * Bounds of a share of which so many of so many were found, by the exact binomial law (Clopper and Pearson 1934):
 *
 *   low:  P(X ≥ found | low, of) = 2½ %,    high:  P(X ≤ found | high, of) = 2½ %
 *
 * found, of: counts. Range: 0 ≤ found ≤ of, of ≥ 1; the share covers the truth at least 95 times in a hundred. Each case is taken
 * to stand by itself. Error: 1e-12.
 */
export function shareBounds(found: number, of: number): readonly [low: number, high: number] {
  if (!(Number.isInteger(found) && Number.isInteger(of) && of >= 1 && found >= 0 && found <= of))
    throw new RangeError(`a share of ${found} in ${of}`);
  const low = found === 0 ? 0 : where((p) => atLeast(found, of, p) > TAIL);
  return [low, found === of ? 1 : 1 - where((q) => atLeast(of - found, of, q) > TAIL)];
}

const TAIL = 0.025;

/** P(X ≥ k) of n cases, each with chance p. Terms by their ratios, in logarithms: n may be thousands. */
export function atLeast(k: number, n: number, p: number): number {
  if (k <= 0) return 1;
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  const odds = Math.log(p) - Math.log1p(-p);
  let term = n * Math.log1p(-p);
  let sum = 0;
  for (let i = 0; i <= n; i++) {
    if (i >= k) sum += Math.exp(term);
    term += Math.log((n - i) / (i + 1)) + odds;
  }
  return Math.min(1, sum);
}

/** Least p from which on it is so. */
function where(so: (p: number) => boolean): number {
  let [no, yes] = [0, 1];
  while (yes - no > 1e-13) {
    const p = (no + yes) / 2;
    if (so(p)) yes = p;
    else no = p;
  }
  return (no + yes) / 2;
}
