/**
 * Bounds of the number of rare things to be expected, of which so many were found, by the exact Poisson law (Garwood 1936):
 *
 *   low:  P(X ≥ found | low) = 2½ %,    high:  P(X ≤ found | high) = 2½ %
 *
 * found: a count ≥ 0, up to some thousands. The interval covers the truth at least 95 times in a hundred. Each is taken to come by
 * itself. Error: 1e-9 of the bound.
 */
export function countBounds(found: number): readonly [low: number, high: number] {
  if (!(Number.isInteger(found) && found >= 0)) throw new RangeError(`a count of ${found}`);
  // Far beyond either bound.
  const most = 20 + 2 * found + 10 * Math.sqrt(found);
  const low = found === 0 ? 0 : where(0, most, (mean) => countAtLeast(found, mean) > TAIL);
  return [low, where(found, most, (mean) => 1 - countAtLeast(found + 1, mean) < TAIL)];
}

const TAIL = 0.025;

/** P(X ≥ k) where on average there are `mean` ≥ 0: summed from the side that is the smaller, for a tail has no figures to lose. */
export function countAtLeast(k: number, mean: number): number {
  if (k <= 0) return 1;
  if (mean <= 0) return 0;
  let log = -mean;
  let below = 0;
  for (let i = 0; i < k; i++) {
    below += Math.exp(log);
    log += Math.log(mean / (i + 1));
  }
  if (mean > k) return Math.max(0, 1 - below);
  let above = 0;
  for (let i = k; Math.exp(log) > 1e-18 * above; i++) {
    above += Math.exp(log);
    log += Math.log(mean / (i + 1));
  }
  return Math.min(1, above);
}

/** Least mean from which on it is so. */
function where(least: number, most: number, so: (mean: number) => boolean): number {
  let [no, yes] = [least, most];
  while (yes - no > 1e-10 * most) {
    const mean = (no + yes) / 2;
    if (so(mean)) yes = mean;
    else no = mean;
  }
  return (no + yes) / 2;
}
