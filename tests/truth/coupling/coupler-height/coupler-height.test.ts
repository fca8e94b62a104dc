import { expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';

it('two couplers within the standard differ by 3/16 in at most', () => {
  const { swing, heightDifference } = assumedValues.coupler;
  expect(heightDifference.value).toBeCloseTo((3 / 16) * 0.0254, 10);
  expect(Math.abs((swing.value * 180) / Math.PI - 13)).toBeLessThan(0.05);
  expect(Math.abs((swing.low * 180) / Math.PI - 7)).toBeLessThan(0.05);
});
