import { expect, it } from 'vitest';
import { STANDARD_ATMOSPHERE } from '../../../../engine/base/constants.ts';
import { exact } from '../../../../engine/base/quantity.ts';
import { atmosphericPressure } from '../../../../engine/things/air/formulas.ts';
import { workableVacuum } from '../../../../engine/things/brake/force.ts';

const psi = 6894.757293168;
const inchMercury = 3386.389;

it.each([
  [5000, 12.23],
  [8000, 10.914],
  [10_000, 10.108],
])('20 inHg of sea level at %d ft', (feet, absolute) => {
  const air = atmosphericPressure(feet * 0.3048);
  expect(Math.abs(air / (absolute * psi) - 1)).toBeLessThan(0.001);
  const vacuum = workableVacuum(exact(20 * inchMercury), air, STANDARD_ATMOSPHERE).value;
  expect(Math.abs(vacuum / inchMercury - (20 * absolute) / 14.696)).toBeLessThan(0.02);
});
