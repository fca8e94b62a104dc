/** Rare counts: against the printed table of the Poisson law, printed exact intervals and the closed forms at their ends. */
import { expect, it } from 'vitest';
import { countAtLeast, countBounds } from '../../../engine/base/numerics/poisson.ts';

// P(X ≤ x) by mean, four places, as in the cumulative tables of textbooks (Pearson and Hartley, Biometrika Tables I, table 7).
const table = [
  [0.5, [0.6065, 0.9098, 0.9856, 0.9982, 0.9998]],
  [1, [0.3679, 0.7358, 0.9197, 0.981, 0.9963]],
  [2, [0.1353, 0.406, 0.6767, 0.8571, 0.9473]],
  [3.5, [0.0302, 0.1359, 0.3208, 0.5366, 0.7254]],
  [5, [0.0067, 0.0404, 0.1247, 0.265, 0.4405]],
] as const;

it.each(table)('with %d on average as the table prints it', (mean, column) => {
  column.forEach((printed, x) => {
    expect(Math.abs(1 - countAtLeast(x + 1, mean) - printed)).toBeLessThan(5.1e-5);
  });
});

// Exact 95 % intervals of Garwood, Biometrika 28 (1936) 437–442, as the manuals of R print them for 0 and 10; 1 and 5 from memory.
const printed = [
  [0, 0, 3.689],
  [1, 0.0253, 5.572],
  [5, 1.623, 11.668],
  [10, 4.8, 18.39],
] as const;

it.each(printed)('of %i found, from %d to %d are to be expected', (found, low, high) => {
  const [l, h] = countBounds(found);
  expect(Math.abs(l - low)).toBeLessThan(0.006);
  expect(Math.abs(h - high)).toBeLessThan(0.006);
});

it('of none it is −ln 2½ %; and a tail of a rare thing keeps its figures', () => {
  expect(countBounds(0)).toEqual([0, expect.closeTo(-Math.log(0.025), 8)]);
  expect(countBounds(1)[0]).toBeCloseTo(-Math.log(0.975), 8);
  expect(countAtLeast(10, 0.01) / (0.01 ** 10 / 3_628_800)).toBeCloseTo(1, 1);
  expect(countAtLeast(2, 1e-6)).toBeGreaterThan(4.9e-13);
  expect(countBounds(2000)[0]).toBeGreaterThan(1900);
});

it('no count of halves, nor below none', () => {
  for (const found of [0.5, -1, Number.NaN]) expect(() => countBounds(found)).toThrow();
});
