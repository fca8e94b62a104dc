/** The closed form by hand, and both vehicles placed on a line of one curve: the same to a millionth of a radian. */
import { describe, expect, it } from 'vitest';
import { bendAt, type EndShape, placing } from '../../../../engine/things/coupler/bend.ts';
import { couplerAngle } from '../../../../engine/things/coupler/formulas.ts';
import { layPlan } from '../../../../engine/things/line/plan.ts';
import type { Line } from '../../../../engine/things/line/types.ts';
import { printedIn } from '../../../support/measured.ts';

const INCH = 0.0254;
const degrees = (a: number): number => (a * 180) / Math.PI;
const standing = (truckCentres: number, overhang: number, shank: number) => ({
  truckCentres: truckCentres * INCH,
  overhang: overhang * INCH,
  shank: shank * INCH,
});
const long = standing(60, 21, 5);
const short = standing(36, 12, 5);
const R = 540 * INCH;

const onCurve = (radius: number): Line =>
  ({
    loop: false,
    length: 40,
    curves: [{ from: 5, to: 35, startCurvature: 1 / radius, endCurvature: 1 / radius, gaugeWidening: 0 }],
  }) as unknown as Line;

const endOf = ({ truckCentres, overhang, shank }: typeof long): EndShape => ({
  guides: truckCentres,
  overhang,
  shank,
});

const byHand = printedIn(import.meta.url, 'D');

describe('coupler angle in a curve', () => {
  it('is what the triangle of pivots and centre gives by hand', () => {
    byHand.figure('alike', degrees(couplerAngle(R, long, long)), 5.40591, 5e-5, '°');
    byHand.figure('beside a short car', degrees(couplerAngle(R, long, short)), 10.25795, 5e-5, '°');
    byHand.figure('of the short car', degrees(couplerAngle(R, short, long)), -1.67343, 5e-5, '°');
  });

  it('is what two vehicles placed on the track show, to 1e-6 rad', () => {
    for (const radius of [R, 7, 30, 200])
      for (const [ahead, behind] of [
        [long, long],
        [long, short],
        [short, long],
      ]) {
        const pair = { ahead: endOf(ahead), behind: endOf(behind) };
        const bend = { ahead: 0, behind: 0 };
        bendAt(layPlan(onCurve(radius), -5, 45), pair, 20, placing(pair), bend);
        expect(Math.abs(Math.asin(bend.ahead) - couplerAngle(radius, ahead, behind))).toBeLessThan(1e-6);
        expect(Math.abs(Math.asin(bend.behind) - couplerAngle(radius, behind, ahead))).toBeLessThan(1e-6);
      }
  });

  it('presses alike vehicles inward as half their distance does, nearly', () => {
    const alike = { truckCentres: 1.2, overhang: 0.5, shank: 0.15 };
    byHand.figure('pull toward the inside', 500 * Math.sin(couplerAngle(15, alike, alike)), 36.67, 0.5, 'N');
  });
});
