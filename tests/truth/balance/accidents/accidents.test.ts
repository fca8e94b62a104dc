/** Published accidents as plausibility: the speeds lie where the room's answers put them. */
import { describe, expect, it } from 'vitest';
import { bodyFrom } from '../../../../engine/questions/balance/body.ts';
import { liftOf, overturnOf, speedLeaving } from '../../../../engine/questions/balance/tipping.ts';
import { radiusOfDegree } from '../../../../engine/things/line/curves.ts';
import { car } from '../../../support/balance.ts';
import { printedIn } from '../../../support/measured.ts';
import { drawer } from '../../../support/random-outings.ts';

const INCH = 0.0254;
const FOOT = 0.3048;
const MPH = 0.44704;
const BASE = 60 * INCH;

const vehicle = car(drawer(1), { length: 20, trucks: [4, 16] });
const heavy = (height: number) => bodyFrom(vehicle, BASE, 100_000, height, []);
const over = (radius: number, cant: number, height: number): number =>
  speedLeaving(overturnOf(heavy(height)), { curvature: 1 / radius, cant: -Math.asin(cant / BASE) * -1 }, 0);

const printed = printedIn(import.meta.url, 'B');

describe('published accidents, plausibility only', () => {
  it('1947: 675 ft, reckoned overturning speed 65 mph', () => {
    const least = over(675 * FOOT, 2 * INCH, 95 * INCH);
    const most = over(675 * FOOT, 5 * INCH, 75 * INCH);
    printed.bound('1947', 65 * MPH, least, most);
    expect(most / least).toBeLessThan(1.4);
  });

  it('2016: a tram at 73 km/h in 30 m goes over, at 20 km/h it is safe', () => {
    for (const height of [1, 1.2, 1.4]) {
      printed.bound('2016, goes over', over(30, 0, height), 0, 73 / 3.6);
      const safe = speedLeaving(liftOf(heavy(height)), { curvature: 1 / 30, cant: 0 }, 0.6);
      printed.bound('2016, safe', safe, 20 / 3.6, Infinity);
    }
  });

  it('2015: 4°, 5 in of cant, 106 mph goes over; 55 mph leaves every wheel 60 %', () => {
    const radius = radiusOfDegree((4 * Math.PI) / 180);
    const cant = Math.asin((5 * INCH) / BASE);
    for (const height of [70, 80]) {
      printed.bound('2015, goes over', over(radius, 5 * INCH, height * INCH), 0, 115 * MPH);
      const safe = speedLeaving(liftOf(heavy(height * INCH)), { curvature: 1 / radius, cant }, 0.6);
      printed.bound('2015, safe', safe, 55 * MPH, Infinity);
    }
  });
});
