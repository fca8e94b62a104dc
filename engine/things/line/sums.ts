/** Sums of track: frogs, warp, wheels that fit. */

import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';
import { twist, twistOverBase } from './curves.ts';

export const trackSums: readonly Sum[] = [
  {
    id: 'frog-angle',
    inputs: [input('number', 'ratio', { low: 0.5, high: 60 })],
    results: [result('angle', 'angle')],
    equation: 'F = 2·atan(1/(2·N))',
    letters: 'F angle, N number',
    source: 'NMRA RP-12.7: N = ½·cot(F/2)',
    compute: ({ number: n }) => [2 * Math.atan(1 / (2 * n))],
  },
  {
    id: 'frog-number',
    inputs: [input('angle', 'angle', { low: 0, open: true, high: Math.PI / 2 })],
    results: [result('number', 'ratio')],
    equation: 'N = 1/(2·tan(F/2))',
    letters: 'N number, F angle',
    source: 'NMRA RP-12.7',
    compute: ({ angle }) => [0.5 / Math.tan(angle / 2)],
  },
  {
    id: 'track-warp',
    inputs: [
      input('difference', 'length', notNegative),
      input('along', 'length', positive),
      input('wheel-base', 'length', notNegative),
    ],
    results: [result('warp', 'twist'), result('wheel-off', 'length')],
    equation: 'w = d/s;  o = w·b',
    letters: 'w warp, d difference, s along, o wheel-off, b wheel-base',
    remark: 'o: how far one wheel stands off the plane of the others',
    source: '49 CFR 213.63 (form of the limit)',
    compute: ({ difference, along, 'wheel-base': base }) => {
      const warp = twist(difference, along);
      return [warp, twistOverBase(warp, base)];
    },
  },
  {
    id: 'wheel-fit',
    inputs: [
      input('gauge', 'length', positive),
      input('flangeway', 'length', positive),
      input('back-to-back', 'length', positive),
      input('wheel-check', 'length', positive),
    ],
    results: [result('check-spare', 'length'), result('back-spare', 'length')],
    equation: 'c = G − f − k;  s = b − (G − 2·f)',
    letters: 'c check-spare, G gauge, f flangeway, k wheel-check, s back-spare, b back-to-back',
    remark: 'neither may be negative',
    source: 'North American ridable-scale wheel standard: wheel check ≤ G − f, back-to-back ≥ G − 2f',
    compute: ({ gauge, flangeway, 'back-to-back': back, 'wheel-check': check }) => [
      gauge - flangeway - check,
      back - (gauge - 2 * flangeway),
    ],
  },
  {
    id: 'grade-of-rise',
    inputs: [input('rise', 'length'), input('run', 'length', positive)],
    results: [result('grade', 'grade')],
    equation: 'i = h/l',
    letters: 'i grade, h rise, l run',
    source: 'definition',
    compute: ({ rise, run }) =>
      Math.abs(rise / run) > 1
        ? { symbol: 'rise', found: `${rise}`, expected: 'no more than the run' }
        : [rise / run],
  },
];
