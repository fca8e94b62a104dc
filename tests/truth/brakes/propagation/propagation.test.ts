import { describe, it } from 'vitest';
import { WAVE_SPEED } from '../../../../engine/things/brake/fill.ts';
import { printedIn } from '../../../support/measured.ts';

const foot = 0.3048;

const printed = printedIn(import.meta.url, 'B');

describe('speed along the pipe', () => {
  it.each([
    ['service', 500],
    ['emergency', 900],
  ])('%s application is slower than the bound laid over every fill', (what, feetPerSecond) => {
    printed.bound(what, feetPerSecond * foot, 0, WAVE_SPEED);
  });

  it('the bound is the speed of sound at 15 °C', () => {
    printed.figure('sound at 15 °C', WAVE_SPEED / foot, 1117, 1, 'ft/s');
  });

  it.each([
    [35, 6.5],
    [50, 10.5],
    [70, 20],
  ])('%d cars measured at %d s lie above the bound', (cars, seconds) => {
    printed.bound(`${cars} cars`, (cars * 40 * foot) / WAVE_SPEED, 0, seconds);
  });
});
