/** Worked by hand in SOURCE.md. */
import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../../../engine/base/constants.ts';
import { exact } from '../../../../engine/base/quantity.ts';
import { bodyFrom, centreHeight, type PointMass } from '../../../../engine/questions/balance/body.ts';
import { groupLoadsMoving, jerk } from '../../../../engine/questions/balance/moved.ts';
import { centreFromTilt } from '../../../../engine/questions/balance/tilt.ts';
import { leans, overturnOf, speedLeaving } from '../../../../engine/questions/balance/tipping.ts';
import { car } from '../../../support/balance.ts';
import { drawer } from '../../../support/random-outings.ts';

const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;

const vehicle = car(drawer(1), {
  length: 7 * FOOT,
  tare: 240 * POUND,
  centre: 9 * INCH,
  trucks: [1.5 * FOOT, 5.5 * FOOT],
});
const four: PointMass[] = [1.5, 2.5, 4.5, 5.5].map((at) => ({
  mass: 180 * POUND,
  at: at * FOOT,
  across: 0,
  height: 25 * INCH,
}));
const loaded = bodyFrom(vehicle, 8 * INCH, 240 * POUND, 9 * INCH, four);
const level = { curvature: 0, cant: 0 };

describe('closed forms of balance', () => {
  it('overturning on the level', () => {
    const tall = bodyFrom(vehicle, 8 * INCH, 300, 20 * INCH, []);
    const v = speedLeaving(overturnOf(tall), { curvature: 1 / (50 * FOOT), cant: 0 }, 0);
    expect(v).toBeCloseTo(5.4672, 4);
    expect(v / 0.44704).toBeCloseTo(12.23, 2);
  });

  it('height of the loaded car and the leans it bears', () => {
    expect(centreHeight(loaded) / INCH).toBeCloseTo(21, 9);
    const l = leans(
      loaded,
      [180, 180, 180, 180].map((m) => m * POUND),
      level,
      0,
    );
    expect((l.all ?? 0) / INCH).toBeCloseTo(16 / 3, 9);
    expect((l.two ?? 0) / INCH).toBeCloseTo((4 * 960) / 360, 9);
  });

  it('tilt test gives back the height, of everything and of the empty car', () => {
    const angle = Math.atan(4 / 21);
    expect((angle * 180) / Math.PI).toBeCloseTo(10.784, 3);
    const found = centreFromTilt(vehicle, { angle: exact(angle, 'measured'), base: 8 * INCH, aboard: four });
    expect((found?.centre.value ?? 0) / INCH).toBeCloseTo(21, 9);
    expect((found?.tareCentre.value ?? 0) / INCH).toBeCloseTo(9, 9);
  });

  it('a car whose load sits over one end lifts that other end’s wheel first, and the tilt test knows', () => {
    const oneEnd = four.map((p) => ({ ...p, at: 2.2 * FOOT }));
    const body = bodyFrom(vehicle, 8 * INCH, 240 * POUND, 9 * INCH, oneEnd);
    const lightest = Math.min(...body.groupMass) / (body.mass / 2);
    const angle = Math.atan((4 * lightest) / 21);
    const found = centreFromTilt(vehicle, { angle: exact(angle), base: 8 * INCH, aboard: oneEnd });
    expect((found?.tareCentre.value ?? 0) / INCH).toBeCloseTo(9, 9);
  });

  it('braking and grade move weight between the trucks', () => {
    const pounds = (loads: number[]): number[] => loads.map((n) => n / GRAVITY / POUND);
    const still = pounds(groupLoadsMoving(loaded, 0, 0));
    expect(pounds(groupLoadsMoving(loaded, 0.1 * GRAVITY, 0))[0] - still[0]).toBeCloseTo(42, 9);
    const up = pounds(groupLoadsMoving(loaded, 0, 0.03));
    const slope = Math.hypot(1, 0.03);
    expect(up[1] - still[1] / slope).toBeCloseTo(12.594, 3);
  });

  it('a rider beyond a truck lifts the other one', () => {
    const out = bodyFrom(vehicle, 8 * INCH, 0, 0, [
      { mass: 150 * POUND, at: 1 * FOOT, across: 0, height: 0.5 },
    ]);
    expect(out.groupMass.map((m) => m / POUND)[0]).toBeCloseTo(168.75, 9);
    expect(out.groupMass.map((m) => m / POUND)[1]).toBeCloseTo(-18.75, 9);
  });

  it('slack taken up', () => {
    expect(jerk(0.5, 300_000, 300)).toBeCloseTo(15.81, 2);
  });
});
