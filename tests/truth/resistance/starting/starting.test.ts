import { describe, expect, it } from 'vitest';
import { assumedValues, defaultRow } from '../../../../data/index.ts';

const LONG_TON = 2240;
const { plain, ball, roller } = assumedValues.startingByBearing;
const running = { plain: defaultRow('rolling/plain').value, ball: defaultRow('rolling/ball').value };

describe('starting resistance', () => {
  it('of plain bearings is at most what Heywood allows for starting, curve and incline together', () => {
    expect(plain.high).toBe(40 / 20);
    expect(Math.abs(running.plain - 20 / LONG_TON)).toBeLessThan(0.00005);
  });

  it('of plain bearings lies by the main-line excess laid on ours: 2.4 to 3.4 kg/t', () => {
    const factor = (excess: number): number => 1 + excess / running.plain;
    expect(factor(0.0024)).toBeGreaterThan(plain.low);
    expect(factor(0.0034)).toBeLessThan(plain.value);
  });

  it('of ball bearings has 88 % less excess than of plain ones', () => {
    const excess = (1 - 0.88) * (plain.value - 1) * running.plain;
    expect(Math.abs(ball.value - (1 + excess / running.ball))).toBeLessThan(0.05);
    expect(roller).toEqual({ ...ball });
    // Eight to one is the same to one digit.
    expect(Math.abs(1 / 8 - (1 - 0.88))).toBeLessThan(0.006);
  });

  it('of ball bearings covers the main-line excess of 2.4 kg/t', () => {
    expect(1 + 0.0024 / running.ball).toBeLessThanOrEqual(ball.high);
  });
});

describe('adhesion of a light engine', () => {
  it('is Heywood’s two ninths, and at most his test on 1 in 10', () => {
    expect(Math.abs(assumedValues.drivenAdhesion.value - 2 / 9)).toBeLessThan(0.0005);
    expect(Math.abs(assumedValues.drivenAdhesion.high - 14.2 / 56)).toBeLessThan(0.0005);
  });
});
