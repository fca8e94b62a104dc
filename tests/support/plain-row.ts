/**
 * A row of vehicles joined by couplers, written out plainly in places and speeds: the witness for the engine's
 * run of the row, whose input types are all that it shares. Dry resistance is −R·sign(v), so it holds only while
 * nothing stands; efforts and brakes rise as the row says. `odex` runs it at a tolerance, `ode-rk4` in even steps.
 */
import { createRequire } from 'node:module';
import type { Ramp, Row, RowCoupler } from '../../engine/motion/row.ts';

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
  /** Places and speeds at the end. */
  readonly last: number[];
}

const risen = ({ force, dead, rise }: Ramp, t: number): number =>
  force * Math.min(1, Math.max(0, (t - dead) / rise));

function pullOf({ slack, stiffness, damping }: RowCoupler, extension: number, opening: number): number {
  const beyond = Math.abs(extension) - slack / 2;
  if (beyond <= 0) return 0;
  const way = Math.sign(extension);
  return way * Math.max(0, stiffness * beyond + damping * opening * way);
}

/** Pull behind vehicle i, from places and speeds in one vector. */
function pullBehind({ bodies, couplers }: Row, i: number, y: readonly number[]): number {
  const n = bodies.length;
  const c = couplers[i];
  return pullOf(c, c.start + y[i] - y[i + 1], y[n + i] - y[n + i + 1]);
}

function rates(row: Row, t: number, y: readonly number[], out: number[]): number[] {
  const { bodies, couplers } = row;
  const n = bodies.length;
  for (let i = 0; i < n; i++) {
    out[i] = y[n + i];
    out[n + i] = -bodies[i].rolling * Math.sign(y[n + i]);
  }
  for (let i = 0; i < couplers.length; i++) {
    const pull = pullBehind(row, i, y);
    out[n + i] -= pull;
    out[n + i + 1] += pull;
  }
  for (const r of row.efforts) out[n + r.vehicle] += risen(r, t);
  for (const r of row.brakes) out[n + r.vehicle] -= risen(r, t) * Math.sign(y[n + r.vehicle]);
  for (let i = 0; i < n; i++) out[n + i] /= bodies[i].mass;
  return out;
}

const startOf = (row: Row): number[] => [...row.bodies.map(() => 0), ...row.speeds];

/** Peaks as they are seen at the times that `look` is called for. */
function peaksOf(row: Row): { look: (y: readonly number[]) => void; peaks: PlainPeaks } {
  const pull = row.couplers.map(() => 0);
  const push = row.couplers.map(() => 0);
  const last = startOf(row);
  const look = (y: readonly number[]): void => {
    for (let i = 0; i < pull.length; i++) {
      const force = pullBehind(row, i, y);
      pull[i] = Math.max(pull[i], force);
      push[i] = Math.max(push[i], -force);
    }
    last.splice(0, last.length, ...y);
  };
  return { look, peaks: { pull, push, last } };
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
    (t, state) => rates(row, t, state, new Array(state.length)),
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
      rates(row, t, y, out);
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
