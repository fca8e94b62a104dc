import { describe, it } from 'vitest';
import { cylinderPressure, equalised, fullReduction } from '../../../../engine/things/brake/equalise.ts';
import { printedIn } from '../../../support/measured.ts';

const psi = 6894.757293168;
const atmosphere = 14.7 * psi;
/** Space of the cylinder 1, reservoir 2.5; all of it counted as full of atmosphere at the start. */
const printed = { clearance: 1 - 1e-9, swept: 1e-9, strokeAt: 2 * psi };
/** The same space all swept: nothing in it at the start. */
const swept = { clearance: 1e-9, swept: 1, strokeAt: 2 * psi };

const handbooks = printedIn(import.meta.url, 'B');

describe('equalisation as printed', () => {
  it('70 psi falls to 50 psi', () => {
    const p = equalised(84.7 * psi, 2.5, printed, atmosphere) / psi - 14.7;
    handbooks.figure('70 psi falls to', p, 50, 0.05, 'psi');
  });

  it('a first reduction of 5 lb gives no braking power', () => {
    const p = cylinderPressure(5 * psi, 84.7 * psi, 2.5, swept, atmosphere);
    handbooks.bound('a first 5 lb', p - atmosphere, -Infinity, swept.strokeAt);
  });

  it('beyond the stroke each pound of reduction gives 2½ lb', () => {
    const at = (r: number): number => cylinderPressure(r * psi, 84.7 * psi, 2.5, swept, atmosphere) / psi;
    handbooks.figure('for each pound', (at(15) - at(10)) / 5, 2.5, 0.0005, 'psi');
  });

  it('20 lb equalises from 70 psi but not from 110 psi', () => {
    const need = (charge: number): number =>
      fullReduction((charge + 14.7) * psi, 2.5, printed, atmosphere) / psi;
    handbooks.bound('from 70 psi', need(70), 0, 20.01);
    handbooks.bound('from 110 psi', need(110), 20.01, Infinity);
  });
});
