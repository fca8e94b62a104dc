import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';

describe('a driver who eases', () => {
  const { utilisation, notice } = assumedValues.easing;

  it('uses the share that half of the riders tested reached, and at most what a machine must reach', () => {
    expect(Math.abs(utilisation.value - 0.56)).toBeLessThan(0.005);
    expect(utilisation.high).toBe(0.75);
    // Novices: 0.5 of what the machine can do.
    expect(utilisation.low).toBeLessThan(0.5);
  });

  it('feels the slide between an expected signal and an unexpected one', () => {
    expect(Math.abs(notice.value - (0.725 + 1.25) / 2)).toBeLessThan(0.05);
    expect(notice.low).toBeLessThan(0.7);
    expect(notice.high).toBeGreaterThan(1.25);
  });
});
