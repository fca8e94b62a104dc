/** Sums of balance and flange climb. */
import { input, result, type Sum } from '../../base/sum.ts';
import { nadalLimit } from './flange.ts';

export const balanceSums: readonly Sum[] = [
  {
    id: 'nadal-limit',
    inputs: [
      input('flange-angle', 'angle', { low: 0, open: true, high: Math.PI / 2 }),
      input('friction', 'ratio', { low: 0, high: 1 }),
    ],
    results: [result('limit', 'ratio')],
    equation: 'q = (tan(δ) − µ)/(1 + µ·tan(δ))',
    letters: 'q limit, δ flange-angle, µ friction',
    remark: 'q is L/V, the sideways by the vertical force',
    source: 'Nadal 1896; 49 CFR 213.333',
    compute: ({ 'flange-angle': delta, friction }) => {
      const limit = nadalLimit(delta, friction);
      return limit > 0
        ? [limit]
        : { symbol: 'flange-angle', found: `${delta}`, expected: 'steeper than the angle of friction' };
    },
  },
];
