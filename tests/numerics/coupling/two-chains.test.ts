/** Chains side by side that catch a tail, against `odex` on the motion of head and tail toward each other. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sharedForce, sharedSnatch } from '../../../engine/things/chain/formulas.ts';
import { beside } from '../../support/measured.ts';
import { integrate } from '../../support/odex.ts';
import { runs } from '../../support/tier.ts';

const figures = fc.record({
  count: fc.integer({ min: 1, max: 4 }),
  difference: fc.double({ min: 0, max: 0.02, noNaN: true }),
  speed: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
  stiffness: fc.double({ min: 1e5, max: 2e6, noNaN: true }),
  mass: fc.double({ min: 50, max: 600, noNaN: true }),
  pull: fc.double({ min: 0, max: 2000, noNaN: true }),
});
const settings = { seed: 20261125, numRuns: runs(60, 600) };

describe('chains side by side', () => {
  it('peak where odex has head and tail turn round', () => {
    const errors: number[] = [];
    fc.assert(
      fc.property(figures, ({ count, difference, speed, stiffness, mass, pull }) => {
        const rates = (_t: number, [x, v]: number[]): number[] => {
          const held = stiffness * (x + (count - 1) * Math.max(0, x - difference));
          return [v, (pull - held) / mass];
        };
        // In steps of a fiftieth of the quickest quarter swing, to where the stretch begins to shrink.
        const step = Math.sqrt(mass / (stiffness * count)) / 32;
        let state = [0, speed];
        let most = 0;
        for (let n = 0; n < 1e4 && state[1] > 0; n++) {
          most = state[0];
          state = integrate(rates, n * step, state, (n + 1) * step, 1e-10);
          most = Math.max(most, state[0]);
        }
        const { shortest, others } = sharedSnatch(count, difference, speed, stiffness, mass, pull);
        errors.push(Math.abs(shortest / (stiffness * most) - 1));
        expect(errors[errors.length - 1]).toBeLessThan(1e-3);
        const joined = count > 1 ? Math.max(0, stiffness * (most - difference)) : 0;
        expect(Math.abs(others - joined)).toBeLessThan(1e-3 * shortest);
      }),
      settings,
    );
    beside(import.meta.url, 'chains side by side that catch a tail: peak', '`odex` on head and tail', errors);
  });

  it('carry the whole of a steady force between them, the shortest the most', () => {
    fc.assert(
      fc.property(figures, ({ count, difference, stiffness, pull }) => {
        const { shortest, others } = sharedForce(count, difference, stiffness, pull);
        expect(shortest + (count - 1) * others).toBeCloseTo(pull, 6);
        expect(shortest).toBeGreaterThanOrEqual(others);
      }),
      settings,
    );
  });

  it('never spare the shortest by hanging less alike', () => {
    fc.assert(
      fc.property(figures, ({ count, difference, speed, stiffness, mass, pull }) => {
        const peak = (d: number): number => sharedSnatch(count, d, speed, stiffness, mass, pull).shortest;
        expect(peak(difference)).toBeGreaterThanOrEqual(peak(difference / 2) * (1 - 1e-12));
        expect(peak(difference)).toBeLessThanOrEqual(peak(Infinity) * (1 + 1e-12));
      }),
      settings,
    );
  });
});
