/** Where a function meets zero. */

/** Where a function that is positive at 0 first meets zero within [0, h], by halving; h where it does not. */
export function firstZero(f: (x: number) => number, h: number): number {
  if (f(h) > 0) return h;
  let low = 0;
  let high = h;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}
