/** Sums of the swept path. */
import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';
import { endThrow, middleThrow } from './throw.ts';

export const clearanceSums: readonly Sum[] = [
  {
    id: 'overthrow',
    inputs: [
      input('radius', 'length', positive),
      input('truck-centres', 'length', positive),
      input('overhang', 'length', notNegative),
    ],
    results: [result('middle', 'length'), result('end', 'length')],
    equation: 'v = R − √(R² − a²/4);  e = √(R² − a²/4 + (a/2 + o)²) − R',
    letters: 'v middle, e end, R radius, a truck-centres, o overhang',
    remark: 'of a thin vehicle, to which half the width is added; play, lean and sway come on top',
    source: 'chord geometry; its first terms a²/8R and (L² − a²)/8R are the trade’s',
    compute: ({ radius, 'truck-centres': centres, overhang }) =>
      centres > 2 * radius
        ? { symbol: 'truck-centres', found: `${centres}`, expected: 'at most twice the radius' }
        : [middleThrow(radius, centres), endThrow(radius, centres, overhang)],
  },
];
