/** Sums of turnouts: lead, radius, closure, and where a train stands clear beyond the frog. */
import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';
import { angleOfFrog, turnoutByLead } from './turnout.ts';

const gauge = input('gauge', 'length', positive);
const number = input('number', 'ratio', { low: 1, high: 60 });

export const turnoutSums: readonly Sum[] = [
  {
    id: 'turnout-lead',
    inputs: [gauge, number],
    results: [result('lead', 'length'), result('radius', 'length')],
    equation: 'L = 2·G·N;  R = 2·G·N²',
    letters: 'L lead, R radius, G gauge, N number',
    remark: 'curved all the way from the tips of the points to the frog; R to the middle of the track',
    source: 'plane geometry: (R + G/2)·(1 − cos F) = G',
    compute: ({ gauge: g, number: n }) => [2 * g * n, 2 * g * n * n],
  },
  {
    id: 'turnout-radius',
    inputs: [gauge, number, input('lead', 'length', positive)],
    results: [result('radius', 'length'), result('crossing', 'length')],
    equation: 'x = L − G·N;  R = 2·N·min(x, G·N)',
    letters: 'x crossing, L lead, G gauge, N number, R radius',
    remark:
      'R to the middle of the track, its frog straight; x from the tips of the points to where the middles of the tracks cross',
    source: 'plane geometry: L = a + R·tan(F/2) + G·N',
    compute: ({ gauge: g, number: n, lead }) => {
      const turnout = turnoutByLead(g, angleOfFrog(n), lead);
      return turnout
        ? [turnout.radius, lead - g * n]
        : { symbol: 'lead', found: `${lead}`, expected: 'more than gauge × number' };
    },
  },
  {
    id: 'turnout-closure',
    inputs: [
      gauge,
      number,
      input('switch-length', 'length', notNegative),
      input('heel-spread', 'length', notNegative),
      input('heel-angle', 'angle', { low: 0, high: Math.PI / 4 }),
      input('toe-length', 'length', notNegative),
    ],
    results: [result('closure', 'length'), result('radius', 'length'), result('lead', 'length')],
    equation:
      'F = 2·atan(1/(2·N));  q = G − h − k·sin(F);  C = q/sin((F + S)/2);  R = C/(2·sin((F − S)/2));  L = l + C·cos((F + S)/2) + k·cos(F)',
    letters:
      'F frog angle, N number, q spread of the closure, G gauge, h heel-spread, k toe-length, C closure, S heel-angle, R radius, L lead, l switch-length',
    remark:
      'R of the outer closure rail, C its chord; l along the track; S of a straight switch rail: asin(h/its length)',
    source: 'US Army TI 850-02 equations 6-12 to 6-14; NMRA RP-12.7 prints C, R and L of four',
    compute: (values) => {
      const [l, h] = [values['switch-length'], values['heel-spread']];
      const [s, k] = [values['heel-angle'], values['toe-length']];
      const f = angleOfFrog(values['number']);
      const q = values['gauge'] - h - k * Math.sin(f);
      if (!(q > 0))
        return {
          symbol: 'toe-length',
          found: `${k}`,
          expected: 'a closure between heel and toe of the frog',
        };
      if (!(f > s))
        return { symbol: 'heel-angle', found: `${s}`, expected: 'less than the angle of the frog' };
      const closure = q / Math.sin((f + s) / 2);
      return [
        closure,
        closure / (2 * Math.sin((f - s) / 2)),
        l + closure * Math.cos((f + s) / 2) + k * Math.cos(f),
      ];
    },
  },
  {
    id: 'fouling-point',
    inputs: [
      gauge,
      number,
      input('passing', 'length', positive),
      input('standing', 'length', positive),
      input('room', 'length', notNegative),
    ],
    results: [result('beyond-frog', 'length')],
    equation: 'F = 2·atan(1/(2·N));  e = (w + b·cos(F) + m)/sin(F) − G·N',
    letters: 'F frog angle, N number, e beyond-frog, w passing, b standing, m room, G gauge',
    remark:
      'w, b half widths of the two trains; both tracks straight beyond the frog; throw and play come on top',
    source: 'plane geometry: the near corner of the standing train, square across from the other track',
    compute: ({ gauge: g, number: n, passing, standing, room }) => {
      const f = angleOfFrog(n);
      return [(passing + standing * Math.cos(f) + room) / Math.sin(f) - g * n];
    },
  },
];
