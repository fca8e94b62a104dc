import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Row, runRow } from '../../engine/coupling/run.ts';

const rows = fc
  .record({
    masses: fc.array(fc.double({ min: 50, max: 800, noNaN: true }), { minLength: 2, maxLength: 12 }),
    spread: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 }),
    slack: fc.double({ min: 0, max: 0.03, noNaN: true }),
    stiffness: fc.double({ min: 1e5, max: 1e6, noNaN: true }),
    damping: fc.double({ min: 0, max: 1500, noNaN: true }),
  })
  .map(
    ({ masses, spread, slack, stiffness, damping }): Row => ({
      bodies: masses.map((mass) => ({ mass, rolling: 0, starting: 0 })),
      couplers: masses
        .slice(1)
        .map((_, i) => ({ slack, stiffness, damping, start: (spread[i] * slack) / 2 })),
      efforts: [],
      brakes: [],
      head: 0,
      speeds: masses.map((_, i) => 2 + spread[i] * 0.3),
      time: 5,
    }),
  );
const settings = { seed: 20261125, numRuns: 60 };
const momentum = (row: Row, speeds: ArrayLike<number>): number =>
  row.bodies.reduce((sum, b, i) => sum + b.mass * speeds[i], 0);
const energy = (row: Row, speeds: ArrayLike<number>): number =>
  row.bodies.reduce((sum, b, i) => sum + (b.mass * speeds[i] ** 2) / 2, 0);

describe('a row of vehicles with no outside force', () => {
  it('keeps its momentum', () => {
    fc.assert(
      fc.property(rows, (row) => {
        const p = momentum(row, row.speeds);
        expect(Math.abs(momentum(row, runRow(row).speeds) / p - 1)).toBeLessThan(1e-11);
      }),
      settings,
    );
  });
  it('never runs with more energy than it had', () => {
    fc.assert(
      fc.property(rows, (row) => {
        // The start lies within the slack, so all energy is motion.
        expect(energy(row, runRow(row).speeds)).toBeLessThanOrEqual(energy(row, row.speeds) * 1.001);
      }),
      settings,
    );
  });
  it('stands where dry resistance holds it, and does not creep', () => {
    fc.assert(
      fc.property(rows, fc.double({ min: 0.1, max: 0.99, noNaN: true }), (row, share) => {
        const bodies = row.bodies.map((b) => ({ ...b, rolling: 20, starting: 40 }));
        const end = runRow({
          ...row,
          bodies,
          speeds: bodies.map(() => 0),
          efforts: [{ vehicle: 0, force: 40 * share, dead: 0, rise: 1 }],
        });
        expect(Math.max(...end.ways.map(Math.abs))).toBe(0);
      }),
      settings,
    );
  });
});
