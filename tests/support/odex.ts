/** The general-purpose integrator `odex` (Gragg–Bulirsch–Stoer) set up as a witness. */
import { createRequire } from 'node:module';

interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(
    f: (x: number, y: number[]) => number[],
    from: number,
    start: number[],
    to: number,
  ): { y: number[]; outcome: number };
}

const { Solver: OdexSolver } = createRequire(import.meta.url)('odex') as {
  Solver: new (n: number) => Solver;
};

/** y at `to` from y at `from`. */
export function integrate(
  f: (x: number, y: number[]) => number[],
  from: number,
  start: number[],
  to: number,
  tolerance = 1e-9,
): number[] {
  const solver = new OdexSolver(start.length);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 100_000;
  return solver.solve(f, from, start, to).y;
}
