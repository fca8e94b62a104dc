/**
 * Chance with a seed, of the witness's own: xorshift128 (Marsaglia 2003), and positions in a spread.
 *
 * A position p in [−1, 1] runs from the low bound over the likely figure (0) to the high bound. `halves`: as the
 * product says its likely figures are meant, half of all draws on each side of it. `textbook`: the triangle
 * of the handbooks, whose top stands at the likely figure; a lopsided spread then has more than half of its
 * draws on its long side.
 */
import type { Quantity } from '../../engine/base/quantity.ts';

export type Triangle = 'halves' | 'textbook';

export function chance(seed: number): () => number {
  let [x, y, z, w] = [123456789 ^ seed, 362436069, 521288629 + seed, 88675123];
  const next = (): number => {
    const t = x ^ (x << 11);
    x = y;
    y = z;
    z = w;
    w = w ^ (w >>> 19) ^ t ^ (t >>> 8);
    return (w >>> 0) / 4294967296;
  };
  for (let i = 0; i < 16; i++) next();
  return next;
}

/** Position from a uniform number: F(p) = (1 + p)²/2 below the top, likewise above. */
export const position = (u: number): number => (u < 0.5 ? Math.sqrt(2 * u) - 1 : 1 - Math.sqrt(2 * (1 - u)));

/** Value of a quantity from a uniform number. */
export function drawn(q: Quantity, u: number, triangle: Triangle): number {
  const { low, value, high } = q;
  if (high <= low) return value;
  if (triangle === 'halves') return at(q, position(u));
  const top = (value - low) / (high - low);
  return u < top
    ? low + Math.sqrt(u * (high - low) * (value - low))
    : high - Math.sqrt((1 - u) * (high - low) * (high - value));
}

export const at = ({ low, value, high }: Quantity, p: number): number =>
  p < 0 ? value + p * (value - low) : value + p * (high - value);
