/** Bounds of a share: against printed exact intervals and the closed forms at its ends. */
import { expect, it } from 'vitest';
import { atLeast, shareBounds } from '../../../engine/base/numerics/binomial.ts';

// Newcombe, Statistics in Medicine 17 (1998) 857–872, table I, method 5 (Clopper and Pearson), four places.
const printed = [
  [81, 263, 0.2527, 0.3676],
  [15, 148, 0.0578, 0.1617],
  [0, 20, 0, 0.1684],
  [1, 29, 0.0009, 0.1776],
] as const;

it.each(printed)('%i of %i lies between %d and %d', (found, of, low, high) => {
  const [l, h] = shareBounds(found, of);
  expect(Math.abs(l - low)).toBeLessThan(5.1e-5);
  expect(Math.abs(h - high)).toBeLessThan(5.1e-5);
});

it('of none and of all it has its closed form', () => {
  for (const n of [1, 12, 299, 4000]) {
    const bound = 0.025 ** (1 / n);
    expect(shareBounds(n, n)[0]).toBeCloseTo(bound, 11);
    expect(shareBounds(n, n)[1]).toBe(1);
    expect(shareBounds(0, n)[1]).toBeCloseTo(1 - bound, 11);
    expect(shareBounds(0, n)[0]).toBe(0);
  }
});

it('what was found and what was not are bounds of each other', () => {
  const [low, high] = shareBounds(11, 12);
  const [less, more] = shareBounds(1, 12);
  expect(low).toBeCloseTo(1 - more, 11);
  expect(high).toBeCloseTo(1 - less, 11);
  expect(atLeast(2, 2, 0.5)).toBeCloseTo(0.25, 14);
});

it('no share of nothing, nor more than all', () => {
  for (const [found, of] of [
    [0, 0],
    [3, 2],
    [-1, 2],
    [0.5, 2],
  ])
    expect(() => shareBounds(found, of)).toThrow();
});
