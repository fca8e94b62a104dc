/** Worked by hand in SOURCE.md. */
import { describe, it } from 'vitest';
import { GRAVITY } from '../../../../engine/base/constants.ts';
import { exact } from '../../../../engine/base/quantity.ts';
import { bodyFrom, centreHeight, type PointMass } from '../../../../engine/questions/balance/body.ts';
import { groupLoadsMoving, jerk } from '../../../../engine/questions/balance/moved.ts';
import { centreFromTilt } from '../../../../engine/questions/balance/tilt.ts';
import { leans, overturnOf, speedLeaving } from '../../../../engine/questions/balance/tipping.ts';
import { car } from '../../../support/balance.ts';
import { printedIn } from '../../../support/measured.ts';
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

const byHand = printedIn(import.meta.url, 'D');

describe('closed forms of balance', () => {
  it('overturning on the level', () => {
    const tall = bodyFrom(vehicle, 8 * INCH, 300, 20 * INCH, []);
    const v = speedLeaving(overturnOf(tall), { curvature: 1 / (50 * FOOT), cant: 0 }, 0);
    byHand.figure('overturning', v, 5.4672, 5e-5, 'm/s');
    byHand.figure('overturning', v / 0.44704, 12.23, 0.005, 'mph');
  });

  it('height of the loaded car and the leans it bears', () => {
    byHand.figure('height, loaded', centreHeight(loaded) / INCH, 21, 5e-10, 'in');
    const l = leans(
      loaded,
      [180, 180, 180, 180].map((m) => m * POUND),
      level,
      0,
    );
    byHand.figure('lean of all', (l.all ?? 0) / INCH, 16 / 3, 5e-10, 'in');
    byHand.figure('lean of two', (l.two ?? 0) / INCH, (4 * 960) / 360, 5e-10, 'in');
  });

  it('tilt test gives back the height, of everything and of the empty car', () => {
    const angle = Math.atan(4 / 21);
    byHand.figure('tilt', (angle * 180) / Math.PI, 10.784, 5e-4, '°');
    const found = centreFromTilt(vehicle, { angle: exact(angle, 'measured'), base: 8 * INCH, aboard: four });
    byHand.figure('tilted, all', (found?.centre.value ?? 0) / INCH, 21, 5e-10, 'in');
    byHand.figure('tilted, empty', (found?.tareCentre.value ?? 0) / INCH, 9, 5e-10, 'in');
  });

  it('a car whose load sits over one end lifts that other end’s wheel first, and the tilt test knows', () => {
    const oneEnd = four.map((p) => ({ ...p, at: 2.2 * FOOT }));
    const body = bodyFrom(vehicle, 8 * INCH, 240 * POUND, 9 * INCH, oneEnd);
    const lightest = Math.min(...body.groupMass) / (body.mass / 2);
    const angle = Math.atan((4 * lightest) / 21);
    const found = centreFromTilt(vehicle, { angle: exact(angle), base: 8 * INCH, aboard: oneEnd });
    byHand.figure('load over one end', (found?.tareCentre.value ?? 0) / INCH, 9, 5e-10, 'in');
  });

  it('braking and grade move weight between the trucks', () => {
    const pounds = (loads: number[]): number[] => loads.map((n) => n / GRAVITY / POUND);
    const still = pounds(groupLoadsMoving(loaded, 0, 0));
    const braking = pounds(groupLoadsMoving(loaded, 0.1 * GRAVITY, 0))[0];
    byHand.figure('moved by braking', braking - still[0], 42, 5e-10, 'lb');
    const up = pounds(groupLoadsMoving(loaded, 0, 0.03));
    const slope = Math.hypot(1, 0.03);
    byHand.figure('moved by a grade', up[1] - still[1] / slope, 12.594, 5e-4, 'lb');
  });

  it('a rider beyond a truck lifts the other one', () => {
    const out = bodyFrom(vehicle, 8 * INCH, 0, 0, [
      { mass: 150 * POUND, at: 1 * FOOT, across: 0, height: 0.5 },
    ]);
    byHand.figure('beyond a truck, near', out.groupMass[0] / POUND, 168.75, 5e-10, 'lb');
    byHand.figure('beyond a truck, far', out.groupMass[1] / POUND, -18.75, 5e-10, 'lb');
  });

  it('slack taken up', () => {
    byHand.figure('slack taken up', jerk(0.5, 300_000, 300), 15.81, 0.005, 'm/s²');
  });
});
