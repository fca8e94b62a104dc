/** Sums of people: what a child weighs. */
import { input, result, type Sum } from '../types.ts';

/** CDC 2000 weight-for-age, boys: months, and kg at the 5th, 50th and 95th percentile. */
const boys = [
  [60.5, 15.23, 18.49, 23.51],
  [96.5, 20.66, 25.75, 35.29],
  [144.5, 30.55, 40.67, 59.3],
] as const;

function at(months: number, column: 1 | 2 | 3): number {
  const i = months < boys[1][0] ? 0 : 1;
  const share = (months - boys[i][0]) / (boys[i + 1][0] - boys[i][0]);
  return boys[i][column] + share * (boys[i + 1][column] - boys[i][column]);
}

export const peopleSums: readonly Sum[] = [
  {
    id: 'child-weight',
    inputs: [input('age-months', 'count', { low: 60.5, high: 144.5 })],
    results: [result('p5', 'mass'), result('p50', 'mass'), result('p95', 'mass')],
    equation: 'between the published percentiles at 60.5, 96.5 and 144.5 months, linear',
    source: 'CDC 2000 weight-for-age, boys; between the rows interpolated (up to 0.5 kg off)',
    compute: ({ 'age-months': age }) => [at(age, 1), at(age, 2), at(age, 3)],
  },
];
