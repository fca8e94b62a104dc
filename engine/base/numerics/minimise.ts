/**
 * Nonlinear least squares: the parameters that make the sum of squared residuals least.
 *
 *   min Σ r_i(x)²;  (JᵀJ + λ·D²)·δ = −Jᵀr, by QR of [J; √λ·D]
 *
 * Levenberg and Marquardt's way between Newton's step and steepest descent; D is the length of J's columns, the greatest so
 * far (Moré), J by central differences relative to each parameter. It ends where a Newton step moves no parameter and says so;
 * a search that runs out says that it did not end: there is no result that looks like one.
 *
 * Sources: Marquardt 1963, Moré 1978 (from memory); held to NIST's reference data sets.
 */
import { leastSquares } from './qr.ts';

export type Residuals = (x: Float64Array) => ArrayLike<number>;

export interface Least {
  readonly x: Float64Array;
  readonly residuals: Float64Array;
  /** ∂r_i/∂x_j by rows. */
  readonly jacobian: Float64Array;
  /** Σ r² */
  readonly sum: number;
  readonly ended: boolean;
}

const MOST_STEPS = 1000;
/** A step that moves no parameter by more than this share of itself is the last, where nothing else is asked. */
const STILL = 1e-11;
/** The cube root of the smallest number that tells in 1: where a central difference errs least. */
const DIFFERENCE = 6e-6;

/**
 * @param scale least size of each parameter that means anything, for differences near zero
 * @param stillAt share of itself by which the last step moves no parameter
 */
export function minimise(
  of: Residuals,
  start: ArrayLike<number>,
  scale: ArrayLike<number>,
  stillAt: number = STILL,
): Least {
  const n = start.length;
  let x = Float64Array.from(start);
  let r = Float64Array.from(of(x));
  let sum = squares(r);
  const d = new Float64Array(n);
  let [damping, grow] = [1e-3, 2];
  let jacobian = differences(of, x, scale, r.length);
  for (let step = 0; step < MOST_STEPS; step++) {
    lengthen(d, jacobian, r.length);
    const move = dampedStep(jacobian, r, d, damping);
    const next = x.map((v, j) => v + move[j]);
    const nextR = Float64Array.from(of(next));
    const nextSum = squares(nextR);
    const still = move.every((m, j) => Math.abs(m) <= stillAt * (Math.abs(x[j]) + scale[j]));
    if (nextSum <= sum) {
      [x, r, sum] = [next, nextR, nextSum];
      jacobian = differences(of, x, scale, r.length);
      [damping, grow] = [damping / 5, 2];
      if (still && damping < 1e-6) return { x, residuals: r, jacobian, sum, ended: true };
    } else {
      // No better, and no farther than its own rounding: the bottom.
      if (still) return { x, residuals: r, jacobian, sum, ended: true };
      [damping, grow] = [damping * grow, grow * 2];
    }
  }
  return { x, residuals: r, jacobian, sum, ended: false };
}

/** A place that the model does not know (not a number) is worse than any. */
function squares(r: Float64Array): number {
  let sum = 0;
  for (const v of r) sum += v * v;
  return Number.isNaN(sum) ? Infinity : sum;
}

function lengthen(d: Float64Array, jacobian: Float64Array, m: number): void {
  const n = d.length;
  for (let j = 0; j < n; j++) {
    let square = 0;
    for (let i = 0; i < m; i++) square += jacobian[i * n + j] ** 2;
    d[j] = Math.max(d[j], Math.sqrt(square));
  }
}

function dampedStep(jacobian: Float64Array, r: Float64Array, d: Float64Array, damping: number): Float64Array {
  const n = d.length;
  const rows = new Float64Array(jacobian.length + n * n);
  rows.set(jacobian);
  const b = new Float64Array(r.length + n);
  for (let i = 0; i < r.length; i++) b[i] = -r[i];
  for (let j = 0; j < n; j++) rows[jacobian.length + j * n + j] = Math.sqrt(damping) * (d[j] || 1);
  return leastSquares(rows, b, n).x;
}

function differences(of: Residuals, x: Float64Array, scale: ArrayLike<number>, m: number): Float64Array {
  const n = x.length;
  const jacobian = new Float64Array(m * n);
  for (let j = 0; j < n; j++) {
    const h = DIFFERENCE * Math.max(Math.abs(x[j]), scale[j]);
    const [up, down] = [Float64Array.from(x), Float64Array.from(x)];
    up[j] += h;
    down[j] -= h;
    const [above, below] = [of(up), of(down)];
    for (let i = 0; i < m; i++) jacobian[i * n + j] = (above[i] - below[i]) / (up[j] - down[j]);
  }
  return jacobian;
}
