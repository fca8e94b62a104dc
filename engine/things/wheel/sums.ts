/** Sums of a wheelset on its track. */
import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';
import { flangePlay, treadOnRail, wheelCheck } from './pair.ts';

export const wheelSums: readonly Sum[] = [
  {
    id: 'wheel-check',
    inputs: [
      input('back-to-back', 'length', positive),
      input('flange', 'length', positive),
      input('guard-check', 'length', positive),
    ],
    results: [result('wheel-check', 'length'), result('check-spare', 'length')],
    equation: 'k = B + f;  c = C − k',
    letters: 'k wheel-check, B back-to-back, f flange, c check-spare, C guard-check',
    remark: 'negative: the flange strikes the point of the frog',
    source: '49 CFR 213.143: guard check at least; here against the wheelset itself',
    compute: ({ 'back-to-back': back, flange, 'guard-check': check }) => [
      wheelCheck(back, flange),
      check - wheelCheck(back, flange),
    ],
  },
  {
    id: 'flange-play',
    inputs: [
      input('gauge', 'length', positive),
      input('widening', 'length', { ...notNegative, default: 0 }),
      input('back-to-back', 'length', positive),
      input('flange', 'length', positive),
    ],
    results: [result('play', 'length')],
    equation: 'p = G + e − (B + 2·f)',
    letters: 'p play, G gauge, e widening, B back-to-back, f flange',
    remark: 'negative: it does not go between the rails',
    source: 'common engineering geometry',
    compute: ({ gauge, widening, 'back-to-back': back, flange }) => [
      flangePlay(gauge, widening, back, flange),
    ],
  },
  {
    id: 'tread-on-rail',
    inputs: [
      input('gauge', 'length', positive),
      input('widening', 'length', { ...notNegative, default: 0 }),
      input('back-to-back', 'length', positive),
      input('flange', 'length', positive),
      input('width', 'length', positive),
    ],
    results: [result('tread', 'length')],
    equation: 't = B + f + b − (G + e)',
    letters: 't tread, B back-to-back, f flange, b width, G gauge, e widening',
    remark: 'negative: the wheel drops between the rails',
    source: 'common engineering geometry',
    compute: ({ gauge, widening, 'back-to-back': back, flange, width }) =>
      width <= flange
        ? { symbol: 'width', found: `${width}`, expected: 'more than the flange: from back to outer face' }
        : [treadOnRail(gauge, widening, back, flange, width)],
  },
];
