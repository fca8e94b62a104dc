import { describe, expect, it } from 'vitest';
import { AIR_GAS_CONSTANT } from '../../../../engine/base/constants.ts';
import { CHOKED_NUMBER, emptyTime, fillTime } from '../../../../engine/things/brake/vessel.ts';
import { printedIn } from '../../../support/measured.ts';
import { integrate } from '../../../support/odex.ts';

const ambient = 101_325;
/** Density of the full charge, kept by the source for the low-pressure case. */
const density = 1.21 * (20.68e6 / ambient);
const start = 1.5 * ambient;
const passage = {
  volume: 0.01111,
  area: 0.85 * (Math.PI / 4) * 0.005 ** 2,
  temperature: start / (density * AIR_GAS_CONSTANT),
};

const notebook = printedIn(import.meta.url, 'B');
const integrated = printedIn(import.meta.url, 'C');
const law = printedIn(import.meta.url, 'D', { source: 'Adiabatic filling is γ times as quick' });

describe('blow-down of a vessel at 1.5 atm, published', () => {
  it('choked all the way: 11.68 s', () => {
    // Choked all the way: let down against a vacuum.
    const choked = emptyTime(passage, 0, start, ambient, 'adiabatic');
    notebook.figure('choked all the way', choked, 11.68, 0.005, 's');
  });

  it('full equation: 19.10 s by an independent integrator, where 20.49 s is printed', () => {
    const time = emptyTime(passage, ambient, start, 1.001 * ambient, 'adiabatic');
    const soundSquared = (p: number): number => (1.4 * p) / (density * (p / start) ** (1 / 1.4));
    const rate = (_: number, [p]: number[]): number[] => {
      const r = Math.max(ambient / p, 1.2 ** -3.5);
      const rho = density * (p / start) ** (1 / 1.4);
      const flux = Math.sqrt(7 * rho * p * Math.max(0, r ** (2 / 1.4) - r ** (2.4 / 1.4)));
      return [(-passage.area * soundSquared(p) * flux) / passage.volume];
    };
    const [reached] = integrate(rate, 0, [start], time);
    expect(Math.abs(reached / (1.001 * ambient) - 1)).toBeLessThan(1e-6);
    integrated.figure('full equation', time, 19.1, 0.005, 's');
  });
});

it('adiabatic filling is γ times as quick as isothermal', () => {
  const vessel = { volume: 0.01, area: 1e-6, temperature: 290 };
  const slow = fillTime(vessel, 600_000, 100_000, 550_000, 'isothermal');
  law.figure('γ', slow / fillTime(vessel, 600_000, 100_000, 550_000, 'adiabatic'), 1.4, 5e-13);
  law.figure('choked flow', CHOKED_NUMBER, 0.6847, 5e-5);
});
