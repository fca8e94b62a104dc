/** The 60 % rule: the deficiency at which a vehicle is at its limit. */
import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../../../engine/base/constants.ts';
import { bodyFrom } from '../../../../engine/questions/balance/body.ts';
import { LEAST_WHEEL_SHARE } from '../../../../engine/questions/balance/limits.ts';
import { liftOf, shareAt, speedLeaving } from '../../../../engine/questions/balance/tipping.ts';
import { cantSpeed } from '../../../../engine/things/line/curves.ts';
import { car } from '../../../support/balance.ts';
import { printedIn } from '../../../support/measured.ts';
import { drawer } from '../../../support/random-outings.ts';

const INCH = 0.0254;

const law = printedIn(import.meta.url, 'D');
const rule = printedIn(import.meta.url, 'A');

describe('49 CFR 213.57(d)', () => {
  const cases = [
    { height: 72, deficiency: 10 },
    { height: 120, deficiency: 6 },
  ];
  for (const { height, deficiency } of cases) {
    it(`centre of gravity at ${height} in: at the limit at ${deficiency} in of deficiency`, () => {
      const vehicle = car(drawer(1), { length: 26, trucks: [4, 22] });
      const body = bodyFrom(vehicle, 60 * INCH, 50_000, height * INCH, []);
      const speed = cantSpeed(400, 60 * INCH, 0, deficiency * INCH);
      const under = { curvature: 1 / 400, cant: 0 };
      rule.figure('least share', LEAST_WHEEL_SHARE.value, 0.6, 0);
      law.figure(`centre at ${height} in`, shareAt(liftOf(body), under, speed), 0.6, 5e-13);
      law.figure('speed', speedLeaving(liftOf(body), under, 0.6), speed, 5e-10, 'm/s');
      // Standing on a tilt table of the same slope: sin and cos instead of 1 and the slope.
      const table = Math.atan(deficiency / 60);
      const standing = shareAt(liftOf(body), { curvature: 0, cant: table }, 0) / Math.cos(table);
      law.figure('on a tilt table', standing, 0.6, 5e-13);
      expect(GRAVITY).toBe(9.80665);
    });
  }
});
