/** Sums of motion: stopping, coasting, energy, in-train forces. */
import { FOOT, GRAVITY } from '../base/constants.ts';
import { input, notNegative, positive, result, type Sum } from '../base/sum.ts';
import { grade, speed, stoppingDistance } from './stopping-sum.ts';

export const motionSums: readonly Sum[] = [
  stoppingDistance,
  {
    id: 'mean-deceleration',
    inputs: [speed, input('distance', 'length', positive)],
    results: [result('deceleration', 'acceleration')],
    equation: 'a = v²/(2·s)',
    letters: 'a deceleration, v speed, s distance',
    source: 'BOStrab Anlage 2 (1987); kinematics',
    compute: ({ speed: v, distance: s }) => [(v * v) / (2 * s)],
  },
  {
    id: 'sight-stopping-distance',
    inputs: [
      speed,
      input('reaction', 'time', { low: 0, high: 10, default: 2.5 }),
      input('deceleration', 'acceleration', { low: 0, open: true, high: 10, default: 11.2 * FOOT }),
      grade,
    ],
    results: [
      result('distance', 'length'),
      result('reaction-distance', 'length'),
      result('braking-distance', 'length'),
    ],
    equation: 'd = r + b;  r = v·t;  b = v²/(2·(a + g·i))',
    letters:
      'd distance, r reaction-distance, b braking-distance, v speed, t reaction, a deceleration, g gravity, i grade',
    source: 'AASHTO Green Book, Exhibit 3-1',
    compute: ({ speed: v, reaction: t, deceleration: a, grade: i }) => {
      const net = a + GRAVITY * i;
      if (net <= 0)
        return { symbol: 'deceleration', found: `${a}`, expected: 'more than the pull of the fall' };
      return [v * t + (v * v) / (2 * net), v * t, (v * v) / (2 * net)];
    },
  },
  {
    id: 'brake-ratio',
    inputs: [input('force', 'force', notNegative), input('mass', 'mass', positive)],
    results: [result('ratio', 'ratio'), result('deceleration', 'acceleration')],
    equation: 'k = F/(m·g);  a = F/m',
    letters: 'k ratio, F force, m mass, g gravity, a deceleration',
    remark: 'the wheels’ inertia is left out',
    source: 'definition',
    compute: ({ force, mass }) => [force / (mass * GRAVITY), force / mass],
  },
  {
    id: 'coasting-distance',
    inputs: [
      speed,
      input('resistance', 'specificForce', { low: 0, high: 0.2 }),
      input('rotating-share', 'ratio', { low: 0, high: 2, default: 0 }),
      grade,
    ],
    results: [result('distance', 'length'), result('deceleration', 'acceleration')],
    equation: 's = v²/(2·a);  a = g·(r + i)/(1 + γ)',
    letters: 's distance, v speed, a deceleration, g gravity, r resistance, i grade, γ rotating-share',
    source: 'energy balance',
    compute: ({ speed: v, resistance: r, 'rotating-share': share, grade: i }) => {
      const slope = r + i;
      if (slope <= 0)
        return {
          symbol: 'grade',
          found: `${i}`,
          expected: 'a grade on which the train slows: the fall must be less than the resistance',
        };
      const a = (GRAVITY * slope) / (1 + share);
      return [(v * v) / (2 * a), a];
    },
  },
  {
    id: 'coast-down-resistance',
    inputs: [
      input('from', 'speed', positive),
      input('to', 'speed', notNegative),
      input('time', 'time', positive),
      input('rotating-share', 'ratio', { low: 0, high: 2, default: 0 }),
      grade,
    ],
    results: [result('resistance', 'specificForce'), result('deceleration', 'acceleration')],
    equation: 'r = (1 + γ)·a/g − i;  a = (v₁ − v₂)/t',
    letters: 'r resistance, γ rotating-share, a deceleration, g gravity, i grade, v₁ from, v₂ to, t time',
    source: 'momentum balance of a coast-down test',
    compute: ({ from, to, time, 'rotating-share': share, grade: i }) => {
      if (to >= from) return { symbol: 'to', found: `${to}`, expected: 'less than the first speed' };
      const a = (from - to) / time;
      return [((1 + share) * a) / GRAVITY - i, a];
    },
  },
  {
    id: 'runaway-speed',
    inputs: [
      input('start-speed', 'speed', { low: 0, default: 0 }),
      input('distance', 'length', positive),
      input('fall', 'grade', { low: 0, open: true, high: 0.15 }),
      input('resistance', 'specificForce', { low: 0, high: 0.2 }),
      input('rotating-share', 'ratio', { low: 0, high: 2, default: 0 }),
    ],
    results: [result('speed', 'speed'), result('time', 'time')],
    equation: 'v = √(v₀² + 2·g·(i − r)·s/(1 + γ));  t = 2·s/(v₀ + v)',
    letters: 'v speed, v₀ start-speed, g gravity, i fall, r resistance, s distance, γ rotating-share, t time',
    source: 'energy balance',
    compute: ({ 'start-speed': v0, distance: s, fall, resistance: r, 'rotating-share': share }) => {
      const a = (GRAVITY * (fall - r)) / (1 + share);
      const square = v0 * v0 + 2 * a * s;
      if (square <= 0 || (a <= 0 && v0 === 0))
        return {
          symbol: 'fall',
          found: `${fall}`,
          expected: 'more than the resistance: the train stops by itself',
        };
      const v = Math.sqrt(square);
      return [v, (2 * s) / (v0 + v)];
    },
  },
  {
    id: 'rotating-energy',
    inputs: [
      input('mass', 'mass', positive),
      input('gyration', 'length', positive),
      input('wheel-radius', 'length', positive),
      speed,
    ],
    results: [result('energy', 'energy'), result('share', 'ratio')],
    equation: 'E = ½·m·q·v²;  q = (k/R)²',
    letters: 'E energy, m mass, q share, v speed, k gyration, R wheel-radius',
    remark: 'q is a share of the wheel’s own energy of travel',
    source: 'Webb, rotating mass of wheels',
    compute: ({ mass: m, gyration: k, 'wheel-radius': r, speed: v }) => {
      if (k > r) return { symbol: 'gyration', found: `${k}`, expected: 'at most the wheel’s radius' };
      return [0.5 * m * (k / r) ** 2 * v * v, (k / r) ** 2];
    },
  },
  {
    id: 'in-train-force',
    inputs: [
      input('mass-behind', 'mass', positive),
      input('acceleration', 'acceleration', { low: -10, high: 10 }),
      input('resistance', 'force', { low: 0, default: 0 }),
      grade,
    ],
    results: [result('force', 'force')],
    equation: 'F = m·(a + g·i) + R',
    letters: 'F force, m mass-behind, a acceleration, g gravity, i grade, R resistance',
    source: 'Newton’s second law on the part behind the gap; OpenStax College Physics ch. 4',
    compute: ({ 'mass-behind': m, acceleration: a, resistance, grade: i }) => [
      m * (a + GRAVITY * i) + resistance,
    ],
  },
  {
    id: 'signal-headway',
    inputs: [
      speed,
      input('sighting', 'length', notNegative),
      input('braking', 'length', notNegative),
      input('block', 'length', notNegative),
      input('train-length', 'length', notNegative),
      input('margin', 'length', { low: 0, default: 0 }),
      input('release', 'time', { low: 0, default: 0 }),
    ],
    results: [result('headway', 'time'), result('distance', 'length')],
    equation: 'h = d/v + t;  d = s + b + l + L + m',
    letters:
      'h headway, d distance, v speed, t release, s sighting, b braking, l block, L train-length, m margin',
    source: 'signalling textbooks: headway of a two-aspect block at constant speed (from memory)',
    compute: ({ speed: v, sighting, braking, block, 'train-length': train, margin, release }) => {
      const s = sighting + braking + block + train + margin;
      return [s / v + release, s];
    },
  },
  {
    id: 'flag-distance',
    inputs: [
      input('stop', 'length', positive),
      input('sight', 'length', { low: 0, default: 0 }),
      input('margin', 'length', { low: 0, default: 0 }),
      input('walking-speed', 'speed', { low: 0, open: true, high: 3, default: 1.2 }),
    ],
    results: [result('distance', 'length'), result('walk', 'time')],
    equation: 'd = max(0, s + m − e);  t = d/w',
    letters: 'd distance, s stop, m margin, e sight, t walk, w walking-speed',
    source:
      'geometry: the following driver must see the flag at least a stopping distance before the standing train',
    compute: ({ stop, sight, margin, 'walking-speed': w }) => {
      const d = Math.max(0, stop + margin - sight);
      return [d, d / w];
    },
  },
  {
    id: 'gap-time',
    inputs: [input('gap', 'length', positive), speed],
    results: [result('time', 'time')],
    equation: 't = d/v',
    letters: 't time, d gap, v speed',
    source: 'kinematics',
    compute: ({ gap, speed: v }) => [gap / v],
  },
];
