import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepare } from '../../engine/motion/prepare.ts';
import { type Row, runRow } from '../../engine/motion/row.ts';
import { openOuting } from '../../engine/outing/open.ts';
import { couplerBands, couplerScenarios } from '../../engine/questions/couplers/ensemble.ts';
import { buildPotential } from '../../engine/things/line/potential.ts';
import { randomOuting } from '../support/random-outings.ts';
import { runs } from '../support/tier.ts';

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
const settings = { seed: 20261125, numRuns: runs(60, 600) };
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

describe('a coupler that takes up its slack', () => {
  it('is snatched no less by more slack', () => {
    const pairs = fc.record({
      masses: fc.tuple(...[0, 1].map(() => fc.double({ min: 50, max: 800, noNaN: true }))),
      stiffness: fc.double({ min: 1e5, max: 1e6, noNaN: true }),
      share: fc.double({ min: 0, max: 0.3, noNaN: true }),
      pull: fc.double({ min: 100, max: 2000, noNaN: true }),
      slacks: fc.tuple(...[0, 1].map(() => fc.double({ min: 0, max: 0.05, noNaN: true }))),
    });
    fc.assert(
      fc.property(pairs, ({ masses: [a, b], stiffness, share, pull, slacks }) => {
        const peaks = [...slacks]
          .sort((x, y) => x - y)
          .map((slack) => {
            const row: Row = {
              bodies: [a, b].map((mass) => ({ mass, rolling: 0, starting: 0 })),
              couplers: [
                {
                  slack,
                  stiffness,
                  damping: 2 * share * Math.sqrt((stiffness * a * b) / (a + b)),
                  start: -slack / 2,
                },
              ],
              efforts: [{ vehicle: 0, force: pull, dead: 0, rise: 1e-6 }],
              brakes: [],
              head: 0,
              speeds: [0, 0],
              time: 2,
            };
            return runRow(row).pull[0];
          });
        // A peak is met within 0.005 of itself.
        expect(peaks[1]).toBeGreaterThan(peaks[0] * 0.99);
      }),
      { seed: 20261125, numRuns: runs(100, 1000) },
    );
  });

  it('carries at last the weight component of what hangs behind', () => {
    const grades = fc.double({ min: 0.005, max: 0.05, noNaN: true });
    fc.assert(
      fc.property(rows, grades, (row, grade) => {
        const line = {
          ...randomOuting(1).line,
          loop: false,
          length: 400,
          heights: [0, 400].map((at) => ({ at, height: at * grade })),
          curves: [],
        };
        const bodies = row.bodies.map((body, i) => ({
          ...body,
          grade: buildPotential(line, [{ behind: i, length: 1, mass: body.mass }], 0, 400, 0.5, 0),
        }));
        // Damped so that the slowest swing of the row dies away as soon as it can.
        const mass = bodies.reduce((sum, b) => sum + b.mass, 0);
        const damping = 1.3 * Math.sqrt(row.couplers[0].stiffness * mass * bodies.length);
        const couplers = row.couplers.map((c) => ({ ...c, damping }));
        // The engine stands fast and holds all others on the grade.
        const anchor = { ...bodies[0], starting: 1e6, rolling: 1e6 };
        const end = runRow({
          ...row,
          bodies: [anchor, ...bodies.slice(1)],
          couplers,
          head: 200,
          speeds: bodies.map(() => 0),
          time: 20,
        });
        bodies.slice(1).forEach((_, gap) => {
          const hangs = bodies.slice(gap + 1).reduce((sum, b) => sum + b.mass * 9.80665 * grade, 0);
          expect(Math.abs(end.last[gap] / hangs - 1)).toBeLessThan(1e-3);
        });
      }),
      { seed: 20261125, numRuns: runs(40, 400) },
    );
  });
});

describe('the band of an ensemble', () => {
  it('contains the likely run, and widens with more runs', () => {
    let widened = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom(...couplerScenarios),
        (seed, scenario) => {
          const context = openOuting(randomOuting(seed, 4));
          const { groups } = prepare(context, 0.5, 0).brakes;
          const bands = [1, 8, 32].map((runs) =>
            couplerBands(context, groups, { scenario, at: 50, speed: 2, runs, seed: 1, time: 4 }),
          );
          bands[0].forEach((likely, gap) => {
            for (const way of ['pull', 'push'] as const) {
              const [one, some, more] = [likely, bands[1][gap], bands[2][gap]].map((b) => b[way]);
              expect(some.most).toBeGreaterThanOrEqual(one.most);
              expect(more.most).toBeGreaterThanOrEqual(some.most);
              expect(more.median).toBeLessThanOrEqual(more.p90);
              expect(more.p90).toBeLessThanOrEqual(more.most);
              if (more.most > some.most) widened++;
            }
          });
        },
      ),
      { seed: 20261125, numRuns: runs(40, 400) },
    );
    expect(widened).toBeGreaterThan(20);
  });
});
