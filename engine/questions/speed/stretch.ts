/** Stretches of a map's grid. */

/** A run of grid points with the same reason. */
export interface Stretch {
  readonly first: number;
  readonly last: number;
}

/** Longest runs over which a test holds. */
export function runsWhere(
  count: number,
  test: (j: number) => boolean,
  same: (i: number, j: number) => boolean,
): Stretch[] {
  const runs: Stretch[] = [];
  let first = -1;
  for (let j = 0; j <= count; j++) {
    const on = j < count && test(j);
    if (first >= 0 && (!on || !same(first, j))) {
      runs.push({ first, last: j - 1 });
      first = -1;
    }
    if (on && first < 0) first = j;
  }
  return runs;
}
