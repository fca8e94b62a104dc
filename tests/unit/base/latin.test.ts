/** Even draws: each part of every column once, and means and percentiles of sums nearer than by chance. */
import { expect, it } from 'vitest';
import { Latin } from '../../../engine/base/latin.ts';
import { meanDrawn, pick, seeded, triangular } from '../../../engine/base/spread.ts';

const ROWS = 200;
const COLUMNS = 4;

function rowsOf(seed: number): number[][] {
  const latin = new Latin(seed, ROWS);
  return Array.from({ length: ROWS }, () => {
    latin.next();
    return Array.from({ length: COLUMNS }, () => latin.draw());
  });
}

it('every column falls once into each part, in an order of its own, and the same seed gives the same', () => {
  const rows = rowsOf(7);
  const parts = (j: number): number[] => rows.map((row) => Math.floor(row[j] * ROWS));
  for (let j = 0; j < COLUMNS; j++) expect(new Set(parts(j)).size).toBe(ROWS);
  expect(parts(0)).not.toEqual(parts(1));
  expect(rowsOf(7)).toEqual(rows);
  expect(rowsOf(8)).not.toEqual(rows);
});

it('after the last row the first comes again', () => {
  const latin = new Latin(3, 2);
  const drawn = Array.from({ length: 4 }, () => {
    latin.next();
    return latin.draw();
  });
  expect(drawn.slice(2)).toEqual(drawn.slice(0, 2));
});

it('the mean of a sum of four scatters from seed to seed far less than by chance, its 95th percentile less', () => {
  const scatter = (figures: number[]): number => {
    const mean = figures.reduce((a, b) => a + b) / figures.length;
    return Math.sqrt(figures.reduce((a, b) => a + (b - mean) ** 2, 0) / figures.length);
  };
  const seeds = Array.from({ length: 40 }, (_, i) => i + 1);
  const even = seeds.map((seed) => rowsOf(seed).map((row) => row.reduce((a, b) => a + b)));
  const chance = seeds.map((seed) => {
    const u = seeded(seed);
    return Array.from({ length: ROWS }, () => u() + u() + u() + u());
  });
  const mean = (sums: number[]): number => sums.reduce((a, b) => a + b) / ROWS;
  const far = (sums: number[]): number => [...sums].sort((a, b) => a - b)[0.95 * ROWS];
  expect(scatter(even.map(mean))).toBeLessThan(0.05 * scatter(chance.map(mean)));
  expect(scatter(even.map(far))).toBeLessThan(scatter(chance.map(far)));
});

it('the mean of what is drawn is told exactly', () => {
  const quantity = { low: 0.02, value: 0.05, high: 0.12, how: 'assumed' } as const;
  const n = 10_000;
  const drawn = Array.from({ length: n }, (_, i) => pick(quantity, triangular((i + 0.5) / n)));
  expect(meanDrawn(quantity)).toBeCloseTo(drawn.reduce((a, b) => a + b) / n, 6);
});
