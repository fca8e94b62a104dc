import { it } from 'vitest';
import { STANDARD_ATMOSPHERE } from '../../../../engine/base/constants.ts';
import { exact } from '../../../../engine/base/quantity.ts';
import { atmosphericPressure } from '../../../../engine/things/air/formulas.ts';
import { workableVacuum } from '../../../../engine/things/brake/force.ts';
import { printedIn } from '../../../support/measured.ts';

const psi = 6894.757293168;
const inchMercury = 3386.389;

const atmosphere = printedIn(import.meta.url, 'A');

it.each([
  [5000, 12.23],
  [8000, 10.914],
  [10_000, 10.108],
])('20 inHg of sea level at %d ft', (feet, absolute) => {
  const air = atmosphericPressure(feet * 0.3048);
  atmosphere.figure(`air at ${feet} ft`, air / psi, absolute, 0.001 * absolute, 'psi');
  const vacuum = workableVacuum(exact(20 * inchMercury), air, STANDARD_ATMOSPHERE).value;
  const share = (20 * absolute) / 14.696;
  atmosphere.figure(`vacuum at ${feet} ft`, vacuum / inchMercury, share, 0.02, 'inHg');
});
