/**
 * Coupler forces of 21 vehicles, against `odex` and `ode-rk4` on a plain right-hand side: a minute through slack;
 * a rear brake on a stretched train, where peaks can be compared run by run; energy through slack without any
 * loss; and an ensemble of 64.
 */

import { prepare } from '../engine/motion/prepare.ts';
import { type Row, runRow, stepOf } from '../engine/motion/row.ts';
import { openOuting } from '../engine/outing/open.ts';
import { couplerBands } from '../engine/questions/couplers/ensemble.ts';
import { type PlainPeaks, plainByOdex, plainByRk4 } from '../tests/support/plain-row.ts';
import { drawer, randomLine, randomOuting } from '../tests/support/random-outings.ts';
import { type BenchRow, ms, quickest } from './row.ts';

const VEHICLES = 21;

/** Level; stretched, or standing anyhow in its slack. */
function rowOf(time: number, stretched: boolean): Row {
  const draw = drawer(21);
  const masses = Array.from({ length: VEHICLES }, (_, i) => (i === 0 ? 600 : draw(80, 420)));
  return {
    bodies: masses.map((mass) => ({ mass, rolling: mass * 0.06, starting: mass * 0.1 })),
    couplers: masses.slice(1).map((mass, i) => {
      const stiffness = draw(5e4, 3e5);
      const slack = draw(0.004, 0.024);
      const shared = (mass * masses[i]) / (mass + masses[i]);
      return {
        slack,
        stiffness,
        damping: 0.2 * Math.sqrt(stiffness * shared),
        start: stretched ? slack / 2 : draw(-0.5, 0.5) * slack,
      };
    }),
    efforts: [],
    brakes: [],
    head: 0,
    speeds: masses.map(() => 4),
    time,
  };
}

const total = ({ bodies }: Row): number => bodies.reduce((sum, b) => sum + b.mass, 0);

/** The engine pulls just as hard as all roll. */
function pulled(): Row {
  const row = rowOf(60, false);
  return { ...row, efforts: [{ vehicle: 0, force: total(row) * 0.06, dead: 0, rise: 0.5 }] };
}

function rearBraked(): Row {
  const row = rowOf(4, true);
  return { ...row, brakes: [{ vehicle: VEHICLES - 1, force: total(row) * 0.3, dead: 0.3, rise: 0.8 }] };
}

function lossless(): Row {
  const row = rowOf(60, true);
  const draw = drawer(5);
  return {
    ...row,
    bodies: row.bodies.map((b) => ({ ...b, rolling: 0, starting: 0 })),
    couplers: row.couplers.map((c) => ({ ...c, damping: 0 })),
    speeds: row.speeds.map(() => draw(3.7, 4.3)),
  };
}

type Run = (row: Row) => Pick<PlainPeaks, 'pull' | 'push' | 'last'>;

const ours: Run = (row) => {
  const { pull, push, ways, speeds } = runRow(row);
  return { pull: [...pull], push: [...push], last: [...ways, ...speeds] };
};

/** Worst peak's error ÷ greatest peak. */
function peakError(row: Row, run: Run, truth: PlainPeaks): number {
  const { pull, push } = run(row);
  const off = (a: readonly number[], b: readonly number[]): number[] => a.map((p, i) => Math.abs(p - b[i]));
  const most = Math.max(...truth.pull, ...truth.push);
  return Math.max(...off(pull, truth.pull), ...off(push, truth.push)) / most;
}

/** Energy of motion against each other and of the springs, J. */
function energy({ bodies, couplers }: Row, y: readonly number[]): number {
  const n = bodies.length;
  const mean = bodies.reduce((sum, b, i) => sum + b.mass * y[n + i], 0) / total({ bodies } as Row);
  const motion = bodies.reduce((sum, b, i) => sum + (b.mass * (y[n + i] - mean) ** 2) / 2, 0);
  return couplers.reduce((sum, c, i) => {
    const beyond = Math.max(0, Math.abs(c.start + y[i] - y[i + 1]) - c.slack / 2);
    return sum + (c.stiffness * beyond ** 2) / 2;
  }, motion);
}

function energyError(row: Row, run: Run): number {
  const before = energy(row, [...row.bodies.map(() => 0), ...row.speeds]);
  return Math.abs(energy(row, run(row).last) / before - 1);
}

function against(what: string, run: Run): BenchRow {
  const [minute, smooth, free] = [pulled(), rearBraked(), lossless()];
  const time = quickest(() => ours(minute), 10);
  const theirs = quickest(() => run(minute), 2);
  const truth = plainByOdex(smooth, 1e-11, 2e-4);
  const errors = (by: Run): string =>
    `peaks ${peakError(smooth, by, truth).toExponential(1)}, energy ${energyError(free, by).toExponential(1)}`;
  return {
    work: `couplers: ${VEHICLES} vehicles, 60 s through slack (${(60_000 / time).toFixed(0)} × real time)`,
    ours: ms(time),
    against: what,
    theirs: ms(theirs),
    ratio: theirs / time,
    ourError: errors(ours),
    theirError: errors(run),
  };
}

function ensemble(): BenchRow {
  const outing = randomOuting(20, VEHICLES - 1);
  const line = { ...randomLine(drawer(3), 0.02, true, 2000), loop: true };
  const context = openOuting({ ...outing, line });
  const { groups } = prepare(context, 0.5, 0).brakes;
  const ask = { scenario: 'full-brake', at: 300, speed: 2.2, runs: 64, seed: 1, time: 20 } as const;
  const time = quickest(() => couplerBands(context, groups, ask));
  const row = { ...pulled(), time: 20 };
  const theirs = quickest(() => plainByRk4(row, stepOf(row)), 2) * 64;
  return {
    work: `couplers: ensemble of 64 runs of 20 s, ${VEHICLES} vehicles, on the line`,
    ours: ms(time),
    against: 'ode-rk4 at the same step, plain right-hand side, level (from one run)',
    theirs: ms(theirs),
    ratio: theirs / time,
    ourError: 'as above',
    theirError: 'as above',
  };
}

export function run(): BenchRow[] {
  const step = stepOf(pulled());
  return [
    against('odex at 1e-8, plain right-hand side', (row) => plainByOdex(row, 1e-8, step)),
    against('ode-rk4 at the same step, plain right-hand side', (row) => plainByRk4(row, step)),
    ensemble(),
  ];
}
