/** At the printed speeds the room's wheel loads show the unbalance of the table. */
import { describe, it } from 'vitest';
import { GRAVITY } from '../../../../engine/base/constants.ts';
import { bodyFrom } from '../../../../engine/questions/balance/body.ts';
import { wheelLoads } from '../../../../engine/questions/balance/wheels.ts';
import { radiusOfDegree } from '../../../../engine/things/line/curves.ts';
import { car } from '../../../support/balance.ts';
import { printedIn } from '../../../support/measured.ts';
import { drawer } from '../../../support/random-outings.ts';

const INCH = 0.0254;
const MPH = 0.44704;
const BASE = 60 * INCH;

const table: Readonly<Record<number, readonly number[]>> = {
  0.5: [93, 100, 107, 113, 120, 125, 131, 136, 141, 146, 151, 156, 160],
  1: [65, 71, 76, 80, 85, 89, 93, 96, 100, 104, 107, 110, 113],
  5: [29, 32, 34, 36, 38, 40, 41, 43, 45, 46, 48, 49, 51],
  12: [19, 20, 22, 23, 24, 26, 27, 28, 29, 30, 31, 32, 33],
};

const coach = bodyFrom(car(drawer(1), { length: 26, trucks: [4, 22] }), BASE, 60_000, 1.8, []);

/** Unbalance that the wheel loads show, in: e = b·a/n, with a/n = (right − left)/(right + left)·b/(2·h). */
function unbalance(degree: number, elevation: number, mph: number): number {
  const curvature = 1 / radiusOfDegree((degree * Math.PI) / 180);
  const cant = Math.asin((elevation * INCH) / BASE);
  const felt = (mph * MPH) ** 2 * curvature;
  const axles = wheelLoads(coach, {
    side: GRAVITY * Math.sin(cant) - felt * Math.cos(cant),
    normal: GRAVITY * Math.cos(cant) + felt * Math.sin(cant),
    rear: 0,
  });
  const outward = axles.reduce((sum, a) => sum + a.right - a.left, 0);
  const weight = axles.reduce((sum, a) => sum + a.right + a.left, 0);
  const height = coach.Z / coach.mass;
  return ((outward / weight) * BASE * BASE) / (2 * height) / INCH;
}

const printed = printedIn(import.meta.url, 'A');

describe('49 CFR 213 Appendix A, Table 1', () => {
  it('wheel loads show 3 in of unbalance at every printed speed', () => {
    for (const [degree, speeds] of Object.entries(table)) {
      speeds.forEach((mph, i) => {
        const elevation = i / 2;
        const low = unbalance(Number(degree), elevation, mph - 0.5);
        const high = unbalance(Number(degree), elevation, mph + 0.5);
        // The rule takes slopes for angles: at 6 in of elevation that is up to 0.06 in.
        printed.bound(`${degree}° ${elevation} in`, 3, low - 0.06, high + 0.06);
      });
    }
  });
});
