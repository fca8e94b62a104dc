import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../../../engine/base/numerics/qr.ts';
import type { Fit, Parameter, Values } from '../../../../engine/calibrate/fit.ts';
import { resultsOf } from '../../../../engine/calibrate/result.ts';
import { printedIn } from '../../../support/measured.ts';

const printed = printedIn(import.meta.url, 'B');
const fromMemory = printedIn(import.meta.url, 'C', { source: 'GUM H.1, from memory' });

describe('H.3: a straight line', () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const line = leastSquares(
    t.flatMap((x) => [1, x - 20]),
    b,
    2,
  );
  const left = b.reduce((sum, y, i) => sum + (y - line.x[0] - line.x[1] * (t[i] - 20)) ** 2, 0);
  const s2 = left / (t.length - 2);
  it('as printed', () => {
    const [c00, c01, c11] = [line.inverse[0], line.inverse[1], line.inverse[3]].map((c) => c * s2);
    printed.figure('y1', line.x[0], -0.1712, 0.00005);
    printed.figure('u(y1)', Math.sqrt(c00), 0.0029, 0.00005);
    printed.figure('y2', line.x[1], 0.00218, 0.000005);
    printed.figure('u(y2)', Math.sqrt(c11), 0.00067, 0.000005);
    printed.figure('r(y1, y2)', c01 / Math.sqrt(c00 * c11), -0.93, 0.005);
    printed.figure('b(30)', line.x[0] + 10 * line.x[1], -0.1494, 0.00005);
    printed.figure('u(b(30))', Math.sqrt(c00 + 20 * c01 + 100 * c11), 0.0041, 0.00005);
  });
});

describe('H.2: three results of three inputs that go together', () => {
  const rows = [
    [5.007, 0.019663, 1.0456],
    [4.994, 0.019639, 1.0438],
    [5.005, 0.01964, 1.0468],
    [4.99, 0.019685, 1.0428],
    [4.999, 0.019678, 1.0433],
  ];
  const mean = [0, 1, 2].map((j) => rows.reduce((sum, r) => sum + r[j], 0) / 5);
  const covariance = new Float64Array(9);
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      covariance[3 * i + j] = rows.reduce((sum, r) => sum + (r[i] - mean[i]) * (r[j] - mean[j]), 0) / 20;
    }
  }
  const parameters: Parameter[] = ['V', 'I', 'phase'].map((key) => ({ key, law: 'plain', start: 1 }));
  const made: Fit = {
    ok: true,
    parameters,
    found: Float64Array.from(mean),
    covariance,
    byChance: covariance,
    scatter: 1,
    readings: 15,
  };
  const looked = (key: string, of: (v: Values) => number) =>
    ({ key, kind: 'ratio', law: 'plain', of }) as const;
  const told = resultsOf(
    made,
    [
      looked('R', (v) => (v['V'] / v['I']) * Math.cos(v['phase'])),
      looked('X', (v) => (v['V'] / v['I']) * Math.sin(v['phase'])),
      looked('Z', (v) => v['V'] / v['I']),
    ],
    { source: 'GUM' },
  );
  it('values, deviations and correlations as printed', () => {
    expect(told.ok).toBe(true);
    if (!told.ok) return;
    const deviation = (i: number): number =>
      (told.results[i].interval[1] - told.results[i].interval[0]) / (2 * 1.959964);
    printed.figure('R', told.results[0].quantity.value, 127.732, 0.0005);
    printed.figure('X', told.results[1].quantity.value, 219.85, 0.005);
    printed.figure('Z', told.results[2].quantity.value, 254.26, 0.005);
    printed.figure('u(R)', deviation(0), 0.071, 0.0005);
    printed.figure('u(X)', deviation(1), 0.3, 0.005);
    printed.figure('u(Z)', deviation(2), 0.24, 0.005);
    printed.figure('r(R, X)', told.correlations[0][1], -0.59, 0.005);
    printed.figure('r(R, Z)', told.correlations[0][2], -0.49, 0.005);
    printed.figure('r(X, Z)', told.correlations[1][2], 0.99, 0.005);
  });
});

describe('H.1: an end gauge against another', () => {
  /** In nm, °C: the other gauge, the difference, their expansion and temperatures. */
  const inputs: readonly (readonly [key: string, value: number, deviation: number])[] = [
    ['standard', 50_000_623, 25],
    ['difference', 215, 9.7],
    ['expansion', 11.5e-6, 1.2e-6],
    ['unlike expansion', 0, 0.58e-6],
    ['off 20 °C', -0.1, 0.41],
    ['unlike warm', 0, 0.029],
  ];
  const n = inputs.length;
  const covariance = new Float64Array(n * n);
  inputs.forEach(([, , u], j) => {
    covariance[j * (n + 1)] = u * u;
  });
  const made: Fit = {
    ok: true,
    parameters: inputs.map(([key]) => ({ key, law: 'plain', start: 1 })),
    found: Float64Array.from(inputs, ([, value]) => value),
    covariance,
    byChance: covariance,
    scatter: 1,
    readings: n,
  };
  const length = (v: Values): number => {
    const { standard, difference, expansion } = v as Record<string, number>;
    const warm = v['unlike expansion'] * v['off 20 °C'] + expansion * v['unlike warm'];
    return standard + difference - standard * warm;
  };
  const told = resultsOf(made, [{ key: 'l', kind: 'length', law: 'plain', of: length }], { source: 'GUM' });
  it('value and deviation to the first order as printed', () => {
    expect(told.ok).toBe(true);
    if (!told.ok) return;
    const [{ quantity, interval }] = told.results;
    fromMemory.figure('l', quantity.value, 50_000_838, 0.5, 'nm');
    fromMemory.figure('u(l)', (interval[1] - interval[0]) / (2 * 1.959964), 32, 0.5, 'nm');
  });
});
