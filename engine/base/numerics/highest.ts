/**
 * The highest point of a function with one peak between two bounds, by golden section; never lower than at either bound.
 *
 * f of x, −Infinity where it is not defined (on one side of the peak only) · low < high · cuts: each narrows the bounds to
 * 0.618 of what they were. Source: Kiefer 1953.
 */
export function highest(
  f: (x: number) => number,
  low: number,
  high: number,
  cuts: number,
): { readonly at: number; readonly value: number } {
  const share = (Math.sqrt(5) - 1) / 2;
  const ends = [
    { at: low, value: f(low) },
    { at: high, value: f(high) },
  ];
  // Where neither cut is defined, the peak is beside the bound that is.
  const leftward = ends[0].value > ends[1].value;
  let [from, to] = [low, high];
  let [a, b] = [to - share * (to - from), from + share * (to - from)];
  let [fa, fb] = [f(a), f(b)];
  for (let i = 0; i < cuts; i++) {
    if (fa > fb || (leftward && fa === -Infinity && fb === -Infinity)) {
      [to, b, fb] = [b, a, fa];
      a = to - share * (to - from);
      fa = f(a);
    } else {
      [from, a, fa] = [a, b, fb];
      b = from + share * (to - from);
      fb = f(b);
    }
  }
  const inside = fa > fb ? { at: a, value: fa } : { at: b, value: fb };
  return ends.reduce((best, end) => (end.value > best.value ? end : best), inside);
}
