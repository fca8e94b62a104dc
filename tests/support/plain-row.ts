/**
 * A row of vehicles joined by couplers, written out plainly in places and speeds: the witness for the engine's
 * run of the row, whose input types are all that it shares. Dry resistance is −R·sign(v), so it holds only while
 * nothing stands; efforts and brakes rise as the row says. `odex` runs it at a tolerance, `ode-rk4` in even steps.
 */
import { createRequire } from 'node:module';
import type { Ramp, Row, RowCoupler } from '../../engine/coupling/run.ts';

const require = createRequire(import.meta.url);

type Steps = (
  y: number[],
  f: (out: number[], y: number[], t: number) => void,
  t: number,
  dt: number,
) => { y: number[]; step(): void };

interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  denseOutput: boolean;
  grid(dt: number, out: (t: number, y: number[]) => void): unknown;
  solve(
    f: (t: number, y: number[]) => number[],
    from: number,
    y: number[],
    to: number,
    out?: unknown,
  ): { y: number[]; outcome: number };
}

const rk4 = require('ode-rk4') as Steps;
const { Solver: Odex } = require('odex') as { Solver: new (n: number) => Solver };

export interface PlainPeaks {
  readonly pull: number[];
  readonly push: number[];
  readonly speeds: number[];
}

const risen = ({ force, dead, rise }: Ramp, t: number): number =>
  force * Math.min(1, Math.max(0, (t - dead) / rise));

function pullOf({ slack, stiffness, damping }: RowCoupler, extension: number, opening: number): number {
  const beyond = Math.abs(extension) - slack / 2;
  if (beyond <= 0) return 0;
  const way = Math.sign(extension);
  return way * Math.max(0, stiffness * beyond + damping * opening * way);
}

/** Pull behind each vehicle but the last, from places and speeds in one vector. */
function pullsOf({ couplers }: Row, y: readonly number[]): number[] {
  const n = couplers.length + 1;
  return couplers.map((c, i) => pullOf(c, c.start + y[i] - y[i + 1], y[n + i] - y[n + i + 1]));
}

function rates(row: Row, t: number, y: readonly number[]): number[] {
  const n = row.bodies.length;
  const force = row.bodies.map(() => 0);
  pullsOf(row, y).forEach((pull, i) => {
    force[i] -= pull;
    force[i + 1] += pull;
  });
  row.bodies.forEach(({ rolling }, i) => {
    force[i] -= rolling * Math.sign(y[n + i]);
  });
  for (const r of row.efforts) force[r.vehicle] += risen(r, t);
  for (const r of row.brakes) force[r.vehicle] -= risen(r, t) * Math.sign(y[n + r.vehicle]);
  return [...y.slice(n), ...force.map((f, i) => f / row.bodies[i].mass)];
}

const startOf = (row: Row): number[] => [...row.bodies.map(() => 0), ...row.speeds];

/** Peaks as they are seen at the times that `look` is called for. */
function peaksOf(row: Row): { look: (y: readonly number[]) => void; peaks: PlainPeaks } {
  const pull = row.couplers.map(() => 0);
  const push = row.couplers.map(() => 0);
  const speeds = [...row.speeds];
  const look = (y: readonly number[]): void => {
    pullsOf(row, y).forEach((force, i) => {
      pull[i] = Math.max(pull[i], force);
      push[i] = Math.max(push[i], -force);
    });
    speeds.forEach((_, i) => {
      speeds[i] = y[speeds.length + i];
    });
  };
  return { look, peaks: { pull, push, speeds } };
}

/** @param every s between the times at which forces are looked at */
export function plainByOdex(row: Row, tolerance: number, every = 5e-4): PlainPeaks {
  const { look, peaks } = peaksOf(row);
  const solver = new Odex(2 * row.bodies.length);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 1e6;
  solver.denseOutput = true;
  const { y } = solver.solve(
    (t, state) => rates(row, t, state),
    0,
    startOf(row),
    row.time,
    solver.grid(every, (_t, state) => look(state)),
  );
  look(y);
  return peaks;
}

export function plainByRk4(row: Row, step: number): PlainPeaks {
  const { look, peaks } = peaksOf(row);
  const run = rk4(
    startOf(row),
    (out, y, t) => {
      const r = rates(row, t, y);
      for (let i = 0; i < r.length; i++) out[i] = r[i];
    },
    0,
    step,
  );
  for (let t = 0; t < row.time - step / 2; t += step) {
    run.step();
    look(run.y);
  }
  return peaks;
}
