/**
 * A fit of 20 readings: speeds of a train that coasts down, R = a + c·v², of which start, a and c are looked for; against a library's
 * loop on the same model, told to go on until it is as near. True values are known, readings are exact: what is left is the fit's own.
 *
 *   v(t) = √(a/c)·tan(atan(v₀·√(c/a)) − t·√(a·c))      a and c ÷ mass, m/s² and 1/m
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { minimise } from '../engine/base/numerics/minimise.ts';
import { type BenchRow, quickest, us } from './row.ts';

const TRUE = [3, 0.05, 0.004] as const;
const START = [2.5, 0.08, 0.002];
const times = Array.from({ length: 20 }, (_, i) => 2 * i);
const FITS = 200;

const speedAt =
  ({ 0: v0, 1: a, 2: c }: ArrayLike<number>) =>
  (t: number): number =>
    Math.sqrt(a / c) * Math.tan(Math.atan(v0 * Math.sqrt(c / a)) - t * Math.sqrt(a * c));

const readings = times.map(speedAt(TRUE));

const ours = (): ArrayLike<number> =>
  minimise(
    (x) => {
      const at = speedAt(x);
      return times.map((t, i) => at(t) - readings[i]);
    },
    START,
    [1, 1, 1],
  ).x;

/** Its step for differences is a tenth as it comes, far more than c itself. */
const theirs = (): ArrayLike<number> =>
  levenbergMarquardt({ x: times, y: readings }, (p) => speedAt(p), {
    initialValues: START,
    gradientDifference: START.map((p) => 1e-6 * p),
    centralDifference: true,
    errorTolerance: 1e-24,
    improvementThreshold: 1e-12,
    maxIterations: 200,
  }).parameterValues;

const asItComes = (): ArrayLike<number> =>
  levenbergMarquardt({ x: times, y: readings }, (p) => speedAt(p), { initialValues: START }).parameterValues;

const off = (found: ArrayLike<number>): string => {
  const worst = Math.max(...TRUE.map((is, i) => Math.abs(found[i] / is - 1)));
  return Number.isFinite(worst) ? `within ${worst.toExponential(0)}` : 'none found';
};

export function run(): BenchRow[] {
  const many = (work: () => unknown) => () => {
    for (let i = 0; i < FITS; i++) work();
  };
  const [we, they] = [quickest(many(ours)), quickest(many(theirs))];
  return [
    {
      work: 'a coast-down of 20 speeds fitted: start, constant and square term',
      ours: us(we, FITS),
      against: 'ml-levenberg-marquardt, tuned by hand',
      theirs: us(they, FITS),
      ratio: they / we,
      ourError: off(ours()),
      theirError: `${off(theirs())}, as it comes ${off(asItComes())}`,
    },
  ];
}
