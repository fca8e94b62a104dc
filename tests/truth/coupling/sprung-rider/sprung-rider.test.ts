import { expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';

it('a rider is at most as stiff as vertically: 31.4 rad/s, damping 0.475', () => {
  const { share, frequency, damping } = assumedValues.sprungRider;
  expect(Math.abs(2 * Math.PI * frequency.high - 31.4)).toBeLessThan(0.05);
  expect(damping.value).toBe(0.475);
  expect(share.high).toBeLessThan(43.4 / 50.1);
});
