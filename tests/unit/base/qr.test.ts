/** Our own least squares beside a well-kept library's, and what it says of columns that tell the same. */
import { inverse, Matrix, QrDecomposition } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { minimise } from '../../../engine/base/numerics/minimise.ts';
import { leastSquares } from '../../../engine/base/numerics/qr.ts';
import { drawer } from '../../support/random-outings.ts';

describe('least squares', () => {
  it('agrees with a library on random tables, values and inverse', () => {
    const draw = drawer(11);
    for (let round = 0; round < 60; round++) {
      const n = 1 + Math.floor(draw(0, 6));
      const m = n + Math.floor(draw(0, 20));
      const scale = Array.from({ length: n }, () => 10 ** draw(-6, 6));
      const rows = Array.from({ length: m }, () => scale.map((s) => s * draw(-1, 1)));
      const b = Array.from({ length: m }, () => draw(-5, 5));
      const ours = leastSquares(rows.flat(), b, n);
      const unscaled = new Matrix(rows.map((row) => row.map((v, j) => v / scale[j])));
      const theirs = new QrDecomposition(unscaled).solve(Matrix.columnVector(b)).to1DArray();
      const spread = inverse(unscaled.transpose().mmul(unscaled));
      expect(ours.rank).toBe(n);
      for (let j = 0; j < n; j++) {
        expect(ours.x[j] * scale[j]).toBeCloseTo(theirs[j], 6);
        const own = ours.inverse[j * (n + 1)] * scale[j] ** 2;
        expect(own / spread.get(j, j)).toBeCloseTo(1, 6);
      }
    }
  });

  it('says which columns tell the same', () => {
    const rows = [1, 2, 3, 4].flatMap((t) => [1, t, 2 * t - 1]);
    const told = leastSquares(rows, [1, 2, 3, 4], 3);
    expect(told.rank).toBe(2);
    expect(told.inverse).toHaveLength(0);
    expect(() => leastSquares([1, 2], [1], 2)).toThrow(RangeError);
  });
});

describe('the search', () => {
  it('says so where it does not end', () => {
    // Never twice the same: there is no bottom.
    let asked = 0;
    const told = minimise(([x]) => [1 + x / ++asked, 1 / asked], [1], [1e-9]);
    expect(told.ended).toBe(false);
  });
  it('steps back from where the model knows nothing', () => {
    const told = minimise(([x]) => [x < 0.5 ? NaN : x - 0.6], [5], [1e-6]);
    expect(told).toMatchObject({ ended: true });
    expect(told.x[0]).toBeCloseTo(0.6, 9);
  });
});
