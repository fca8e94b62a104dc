/** Sums of people: what a child weighs. */

import { input, result, type Sum } from '../../base/sum.ts';
import { CHILD_AGES, childWeight, type Sex } from './child.ts';

export const peopleSums: readonly Sum[] = [
  {
    id: 'child-weight',
    inputs: [
      input('age-months', 'ratio', CHILD_AGES),
      input('girl', 'count', { low: 0, high: 1, whole: true, default: 0 }),
      input('percentile', 'ratio', { low: 0.01, high: 0.99, default: 0.95 }),
    ],
    results: [
      result('p5', 'mass'),
      result('p50', 'mass'),
      result('p95', 'mass'),
      result('at-percentile', 'mass'),
    ],
    equation:
      'm = w(a, s, q);  m₅ = w(a, s, 0.05);  m₅₀ = w(a, s, 0.5);  m₉₅ = w(a, s, 0.95);  w = M·(1 + L·S·z)^(1/L)',
    letters:
      'm at-percentile, m₅ p5, m₅₀ p50, m₉₅ p95, w weight, a age-months, s girl, q percentile, M median, L power, S variation, z normal-deviate',
    remark: 'L, M, S by age and sex from the table; z of the percentile',
    source: 'CDC Growth Charts 2000, weight for age 2 to 20 years, LMS parameters of every twelfth month',
    compute: ({ 'age-months': age, girl, percentile }) => {
      const sex: Sex = girl === 1 ? 'girl' : 'boy';
      return [0.05, 0.5, 0.95, percentile].map((share) => childWeight(age, sex, share));
    },
  },
];
