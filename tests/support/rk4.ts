/** The general-purpose fixed-step integrator `ode-rk4` set up as a witness where the force has kinks. */
import { createRequire } from 'node:module';

type Derivative = (out: number[], y: number[], t: number) => void;
type Make = (
  y: number[],
  derivative: Derivative,
  t: number,
  dt: number,
) => { y: number[]; steps(n: number): unknown };

const make = createRequire(import.meta.url)('ode-rk4') as Make;

/** y at `to` from y at `from` in n even steps. */
export function march(
  f: (x: number, y: readonly number[]) => readonly number[],
  from: number,
  start: readonly number[],
  to: number,
  n: number,
): number[] {
  const derivative: Derivative = (out, y, x) => {
    const rates = f(x, y);
    for (let i = 0; i < rates.length; i++) out[i] = rates[i];
  };
  const run = make([...start], derivative, from, (to - from) / n);
  run.steps(n);
  return run.y;
}
