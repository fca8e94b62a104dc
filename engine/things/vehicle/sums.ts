/** Sums of a vehicle over a crest or a sag. */
import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';
import { railRise } from './hump.ts';

export const humpSums: readonly Sum[] = [
  {
    id: 'rail-rise',
    inputs: [
      input('truck-centres', 'length', positive),
      input('along', 'length', notNegative),
      input('radius', 'length', positive),
    ],
    results: [result('rise', 'length')],
    equation: 'r = x·(A − x)/(2·R)',
    letters: 'r rise, x along, A truck-centres, R radius',
    remark: 'x: from one truck to the part, between the two; half of A is the worst: the versine A^2/(8·R)',
    source: 'common engineering geometry (parabola)',
    compute: ({ 'truck-centres': centres, along, radius }) =>
      along > centres
        ? { symbol: 'along', found: `${along}`, expected: 'at most the truck centres: between the two' }
        : [railRise(centres, along, radius)],
  },
];
