/**
 * Peak forces of random rows against `odex` at 1e-9 on a plain right-hand side (tests/support/plain-row.ts):
 * stretched or bunched before the brake is applied, without slack, or run in through it. Long rows that run in are
 * sensitive to how each slack runs out, so there the band is compared too.
 */
import { describe, expect, it } from 'vitest';
import { percentile } from '../../../engine/base/spread.ts';
import { type Row, runRow } from '../../../engine/motion/row.ts';
import { beside } from '../../support/measured.ts';
import { plainByOdex } from '../../support/plain-row.ts';
import { type Draw, drawer } from '../../support/random-outings.ts';

type Scene = 'pulled' | 'rear braked, stretched' | 'engine braked, bunched' | 'engine braked, run-in';

function rowOf(draw: Draw, scene: Scene, count: number, slack: number): Row {
  const masses = Array.from({ length: count }, (_, i) => (i === 0 ? draw(300, 900) : draw(60, 600)));
  const total = masses.reduce((a, b) => a + b, 0);
  const bunched = scene === 'engine braked, bunched' ? -0.5 : 0.5;
  const braked = scene === 'rear braked, stretched' ? count - 1 : 0;
  const ramp = (vehicle: number, share: number, dead: number) => ({
    vehicle,
    force: total * share,
    dead,
    rise: draw(0.3, 1.5),
  });
  return {
    bodies: masses.map((mass) => ({ mass, rolling: mass * draw(0.03, 0.12), starting: 1e9 })),
    couplers: masses.slice(1).map((m, i) => {
      const stiffness = draw(5e4, 5e5);
      const z = slack * draw(0.5, 1.5);
      const shared = (m * masses[i]) / (m + masses[i]);
      return {
        slack: z,
        stiffness,
        damping: 2 * draw(0.02, 0.2) * Math.sqrt(stiffness * shared),
        start: bunched * z,
      };
    }),
    efforts: scene === 'pulled' ? [ramp(0, draw(0.2, 0.6), 0.2)] : [],
    brakes: scene === 'pulled' ? [] : [ramp(braked, draw(0.2, 0.6), 0.3)],
    head: 0,
    speeds: masses.map(() => 5),
    time: 4,
  };
}

/** Worst error of a peak ÷ greatest peak of the row. */
function errorOf(row: Row): number {
  const [ours, theirs] = [runRow(row), plainByOdex(row, 1e-9)];
  // The plain right-hand side holds only while all roll.
  expect(Math.min(...theirs.last.slice(row.bodies.length))).toBeGreaterThan(0);
  const most = Math.max(...theirs.pull, ...theirs.push);
  expect(most).toBeGreaterThan(20);
  return Math.max(
    ...theirs.pull.map((p, i) => Math.abs(ours.pull[i] - p) / most),
    ...theirs.push.map((p, i) => Math.abs(ours.push[i] - p) / most),
  );
}

const PLAIN = '`odex` at 1e-9 on a plain right-hand side';

describe('peak forces of random rows against odex', () => {
  const all: number[] = [];
  beside(import.meta.url, 'peak forces in a row of vehicles, of the greatest', PLAIN, all);
  it.each([
    ['pulled', 20, 12, 0],
    ['rear braked, stretched', 20, 12, 0.01],
    ['engine braked, bunched', 20, 12, 0.01],
    ['engine braked, run-in', 60, 2, 0.02],
    ['engine braked, run-in', 30, 3, 0.02],
  ] as const)('%s: %i rows of up to %i vehicles', (scene, rows, count, slack) => {
    const draw = drawer(20261125);
    const errors = Array.from({ length: rows }, () =>
      errorOf(rowOf(draw, scene, Math.max(2, Math.round(draw(count * 0.6, count))), slack)),
    ).sort((a, b) => a - b);
    all.push(...errors);
    expect(errors[rows - 1]).toBeLessThan(0.005);
  });
});

describe('long rows that run in through slack, against odex', () => {
  it('agree gap by gap, and in the band', () => {
    const draw = drawer(4711);
    const rows = Array.from({ length: 59 }, () => rowOf(draw, 'engine braked, run-in', 12, 0.012));
    const ours = rows.map((row) => runRow(row).push);
    const theirs = rows.map((row) => plainByOdex(row, 1e-9).push);
    const sorted = (values: Iterable<number>): number[] => [...values].sort((a, b) => a - b);
    const errors = sorted(
      theirs.map((push, i) => {
        const off = push.map((force, gap) => Math.abs(ours[i][gap] - force));
        return Math.max(...off) / Math.max(...push);
      }),
    );
    beside(import.meta.url, 'peak forces in long rows that run in, of the greatest', PLAIN, errors);
    expect(percentile(errors, 0.9)).toBeLessThan(0.005);
    expect(percentile(errors, 1)).toBeLessThan(0.01);
    rows[0].couplers.forEach((_, gap) => {
      const [a, b] = [ours, theirs].map((all) => sorted(all.map((push) => push[gap])));
      for (const q of [0.5, 0.9, 1])
        expect(Math.abs(percentile(a, q) / percentile(b, q) - 1)).toBeLessThan(0.005);
    });
  });
});
