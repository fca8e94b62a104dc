/**
 * Positions within a quantity's spread, and seeded draws from it.
 *
 * A position p in [−1, 1] runs from the low bound (−1) over the likely value (0) to the high bound (1).
 */
import type { Quantity } from './quantity.ts';

/** Value at a position, linear on each side of the likely value. @param p in [−1, 1] */
export function pick(quantity: Quantity, p: number): number {
  return p < 0
    ? quantity.value + p * (quantity.value - quantity.low)
    : quantity.value + p * (quantity.high - quantity.value);
}

/**
 * Small fast seeded generator of uniform numbers in [0, 1) (mulberry32, public domain, period 2³²):
 * enough for a few hundred thousand draws, repeatable everywhere since it uses integers alone.
 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A number of a name, for a seed of its own: FNV-1a, 32 bits (public domain). */
export const hash = (text: string): number =>
  [...text].reduce((h, c) => Math.imul(h ^ c.charCodeAt(0), 0x01000193), 0x811c9dc5);

/**
 * A position drawn from the triangle over [−1, 1] with its top at 0: half the draws on each side of
 * the likely value, none beyond the bounds.
 */
export function triangular(uniform: number): number {
  return uniform < 0.5 ? Math.sqrt(2 * uniform) - 1 : 1 - Math.sqrt(2 * (1 - uniform));
}

/** Mean of what is drawn so: a position is ⅓ out on the average, half of them on each side. */
export const meanDrawn = ({ low, value, high }: Quantity): number => value + (low + high - 2 * value) / 6;

/** Interpolated percentile of sorted values, q in [0, 1] (definition 7: linear between order statistics). */
export function percentile(sorted: ArrayLike<number>, q: number): number {
  const r = q * (sorted.length - 1);
  const i = Math.floor(r);
  if (i + 1 >= sorted.length || sorted[i] === sorted[i + 1]) return sorted[i];
  return sorted[i] + (r - i) * (sorted[i + 1] - sorted[i]);
}
