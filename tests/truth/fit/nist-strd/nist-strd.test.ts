import { describe, expect, it } from 'vitest';
import { minimise } from '../../../../engine/base/numerics/minimise.ts';
import { leastSquares } from '../../../../engine/base/numerics/qr.ts';
import { printedIn } from '../../../support/measured.ts';
import { longley, norris, sets } from './sets.ts';

/** Digits in which a figure agrees with the certified one. */
const digits = (ours: number, certified: number): number => -Math.log10(Math.abs(ours / certified - 1));

/** Seven digits: what the hardest set keeps with differences for derivatives. */
const printed = printedIn(import.meta.url, 'B');
const SEVEN = 1e-7;

describe('straight lines', () => {
  const line = leastSquares(
    norris.x.flatMap((x) => [1, x]),
    norris.y,
    2,
  );
  it('Norris: values, deviations and covariance', () => {
    norris.values.forEach((v, j) => expect(digits(line.x[j], v)).toBeGreaterThan(11));
    const { deviation } = norris;
    norris.deviations.forEach((v, j) => {
      expect(digits(deviation * Math.sqrt(line.inverse[3 * j]), v)).toBeGreaterThan(11);
    });
    // Not certified: another program's own arithmetic.
    expect(digits(deviation ** 2 * line.inverse[1], norris.covariance)).toBeGreaterThan(10);
  });

  it('Longley: no digits lost to its near-parallel columns', () => {
    const fitted = leastSquares(
      longley.rows.flatMap((row) => [1, ...row.slice(0, 6)]),
      longley.rows.map((row) => row[6]),
      7,
    );
    expect(fitted.rank).toBe(7);
    longley.values.forEach((v, j) => {
      expect(digits(fitted.x[j], v)).toBeGreaterThan(11);
      printed.figure(`Longley b${j}`, fitted.x[j], v, SEVEN * Math.abs(v));
    });
    const left = longley.rows.reduce(
      (sum, row) =>
        sum + (row[6] - [1, ...row].reduce((s, c, j) => s + (j < 7 ? c * fitted.x[j] : 0), 0)) ** 2,
      0,
    );
    longley.deviations.forEach((v, j) => {
      expect(digits(Math.sqrt((left / 9) * fitted.inverse[8 * j]), v)).toBeGreaterThan(9);
    });
  });
});

describe.each(sets)('$name', ({ name, model, starts, values, deviations, left, x, y, mirrored = [] }) => {
  it.each(starts.map((start, i) => ({ i: i + 1, start })))('from its start $i', ({ start }) => {
    const found = minimise(
      (b) => x.map((xi, i) => model(b, xi) - y[i]),
      start,
      start.map(() => 1e-9),
    );
    expect(found.ended).toBe(true);
    const spread = leastSquares(
      found.jacobian,
      x.map(() => 0),
      start.length,
    ).inverse;
    const variance = found.sum / (x.length - start.length);
    values.forEach((v, j) => {
      const ours = mirrored.includes(j) ? Math.abs(found.x[j]) : found.x[j];
      printed.figure(`${name} b${j + 1}`, ours, v, SEVEN * v);
    });
    deviations.forEach((v, j) => {
      expect(digits(Math.sqrt(variance * spread[j * (start.length + 1)]), v)).toBeGreaterThan(6);
    });
    expect(digits(found.sum, left)).toBeGreaterThan(9);
  });
});
