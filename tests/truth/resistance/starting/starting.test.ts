import { describe, expect, it } from 'vitest';
import { assumedValues, defaultRow } from '../../../../data/index.ts';
import { printedIn } from '../../../support/measured.ts';

const LONG_TON = 2240;
const { plain, ball, roller } = assumedValues.startingByBearing;
const running = { plain: defaultRow('rolling/plain').value, ball: defaultRow('rolling/ball').value };

const heywood = printedIn(import.meta.url, 'A');
const mainLine = printedIn(import.meta.url, 'B');

describe('starting resistance', () => {
  it('of plain bearings is at most what Heywood allows for starting, curve and incline together', () => {
    heywood.figure('plain bearings, most', plain.high, 40 / 20, 0);
    heywood.figure('running, plain', running.plain, 20 / LONG_TON, 0.00005);
  });

  it('of plain bearings lies by the main-line excess laid on ours: 2.4 to 3.4 kg/t', () => {
    const factor = (excess: number): number => 1 + excess / running.plain;
    mainLine.bound('2.4 kg/t', factor(0.0024), plain.low, plain.value);
    mainLine.bound('3.4 kg/t', factor(0.0034), plain.low, plain.value);
  });

  it('of ball bearings has 88 % less excess than of plain ones', () => {
    const excess = (1 - 0.88) * (plain.value - 1) * running.plain;
    mainLine.figure('ball bearings', ball.value, 1 + excess / running.ball, 0.05);
    expect(roller).toEqual({ ...ball });
    // Eight to one is the same to one digit.
    expect(Math.abs(1 / 8 - (1 - 0.88))).toBeLessThan(0.006);
  });

  it('of ball bearings covers the main-line excess of 2.4 kg/t', () => {
    mainLine.bound('2.4 kg/t, ball bearings', 1 + 0.0024 / running.ball, 1, ball.high);
  });
});

describe('adhesion of a light engine', () => {
  it('is Heywood’s two ninths, and at most his test on 1 in 10', () => {
    heywood.figure('adhesion', assumedValues.drivenAdhesion.value, 2 / 9, 0.0005);
    heywood.figure('adhesion, most', assumedValues.drivenAdhesion.high, 14.2 / 56, 0.0005);
  });
});
