import { describe, expect, it } from 'vitest';
import { assumedValues, instruments } from '../../../../data/index.ts';
import { type LeakDown, leakDown, leaked } from '../../../../engine/calibrate/tests/brake-air.ts';
import { printedIn } from '../../../support/measured.ts';

const PSI = 6894.757293168;
const outside = 14.7 * PSI;
const printed = printedIn(import.meta.url, 'D');
const tau = ((90 + 14.7) / 5) * 60;

describe('a choked leak', () => {
  it('falls as e^(−t/τ), and is half gone after 11.76 min', () => {
    printed.figure('time constant', tau / 60, 20.94, 0.005, 'min');
    const [left] = leaked(90 * PSI, tau, false, outside, [11.76 * 60]);
    printed.figure('left after 11.76 min', left / PSI, 45, 0.05, 'psi');
  });

  it('is found again from its readings', () => {
    const test: LeakDown = {
      kind: 'leak-down',
      source: 'leak',
      brake: 'automatic-air',
      atmosphere: outside,
      readings: [0, 60, 120, 240, 360].map((time) => ({
        time,
        pressure: 104.7 * PSI * Math.exp(-time / tau) - outside,
      })),
    };
    const made = leakDown(test, { instruments, assumed: assumedValues });
    if (!made.ok) throw new Error(made.code);
    const [leak, half] = made.results;
    printed.figure('time until half is gone', half.quantity.value / 60, 11.76, 0.005, 'min');
    expect(leak.quantity.value / PSI).toBeCloseTo(104.7 * (1 - Math.exp(-60 / tau)), 3);
  });

  it('a vacuum of more than half an atmosphere falls evenly', () => {
    const [after, later] = leaked(80_000, 600, true, 101_325, [60, 120]);
    expect(80_000 - after).toBeCloseTo((101_325 * 60) / 600, 0);
    expect(after - later).toBeCloseTo((101_325 * 60) / 600, 0);
  });
});
