import { describe, expect, it } from 'vitest';
import { WAVE_SPEED } from '../../../../engine/things/brake/fill.ts';

const foot = 0.3048;

describe('speed along the pipe', () => {
  it.each([
    ['service', 500],
    ['emergency', 900],
  ])('%s application is slower than the bound laid over every fill', (_, feetPerSecond) => {
    expect(feetPerSecond * foot).toBeLessThan(WAVE_SPEED);
  });

  it('the bound is the speed of sound at 15 °C', () => {
    expect(WAVE_SPEED / foot).toBeCloseTo(1116.4, 0);
  });

  it.each([
    [35, 6.5],
    [50, 10.5],
    [70, 20],
  ])('%d cars measured at %d s lie above the bound', (cars, seconds) => {
    expect((cars * 40 * foot) / WAVE_SPEED).toBeLessThan(seconds);
  });
});
