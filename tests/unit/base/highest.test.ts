/** The highest point of one peak: by hand where it is inside, at a bound, or beside where nothing is defined. */
import { expect, it } from 'vitest';
import { highest } from '../../../engine/base/numerics/highest.ts';

it('is found inside', () => {
  const { at, value } = highest((x) => 5 - (x - 0.3) ** 2, -1, 1, 40);
  expect(at).toBeCloseTo(0.3, 6);
  expect(value).toBeCloseTo(5, 12);
});

it('is the bound itself where it rises to there', () => {
  expect(highest((x) => x, 0, 2, 20)).toEqual({ at: 2, value: 2 });
  expect(highest((x) => 1 - x, 0, 2, 20)).toEqual({ at: 0, value: 1 });
});

it('is found where the function is defined on little of the way, on either side', () => {
  const near = (peak: number) => (x: number) => (Math.abs(x - peak) > 0.15 ? -Infinity : -Math.abs(x - peak));
  expect(highest(near(0.1), 0, 1, 40).at).toBeCloseTo(0.1, 6);
  expect(highest(near(0.9), 0, 1, 40).at).toBeCloseTo(0.9, 6);
});
