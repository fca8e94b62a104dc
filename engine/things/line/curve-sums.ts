/** Sums of curves: cant, speed, overturning. */

import { GRAVITY, INCH, MPH } from '../../base/constants.ts';
import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';
import {
  cantSpeed,
  centreHeightFromTilt,
  centrifugalForce,
  degreeOfRadius,
  equilibriumCant,
  leanToLift,
  overturningSpeed,
  radiusFromVersine,
  radiusOfDegree,
  versineOfRadius,
} from './curves.ts';

const radius = input('radius', 'length', positive);
const base = input('base', 'length', positive);
const speed = input('speed', 'speed', { low: 0, high: 100 });
const RIGHT = Math.PI / 2;

export const curveSums: readonly Sum[] = [
  {
    id: 'equilibrium-cant',
    inputs: [speed, radius, base],
    results: [result('cant', 'length')],
    equation: 'e = b·v²/(g·R)',
    letters: 'e cant, b base, v speed, g gravity, R radius',
    source: 'US Army TR0671 p. 69 (0.00066·D·V² at standard gauge)',
    compute: ({ speed: v, radius: r, base: b }) => {
      const cant = equilibriumCant(v, r, b);
      return cant <= b
        ? [cant]
        : { symbol: 'speed', found: `${v}`, expected: 'a speed whose cant is less than the base' };
    },
  },
  {
    id: 'curve-speed',
    inputs: [
      radius,
      base,
      input('cant', 'length', { low: 0, default: 0 }),
      input('deficiency', 'length', notNegative),
    ],
    results: [result('speed', 'speed')],
    equation: 'v = √(g·R·(e + d)/b)',
    letters: 'v speed, g gravity, R radius, e cant, d deficiency, b base',
    source: '49 CFR 213.57 and Appendix A (form)',
    compute: ({ radius: r, base: b, cant, deficiency }) => {
      if (cant + deficiency >= b)
        return {
          symbol: 'deficiency',
          found: `${deficiency}`,
          expected: 'cant and deficiency together less than the base',
        };
      return [cantSpeed(r, b, cant, deficiency)];
    },
  },
  {
    id: 'curve-speed-by-degree',
    inputs: [
      input('degree', 'angle', { low: 0, open: true, high: Math.PI / 2 }),
      input('cant', 'length', { low: 0, high: 0.2, default: 0 }),
      input('unbalance', 'length', { low: 0, high: 0.2, default: 0.0762 }),
    ],
    results: [result('speed', 'speed')],
    equation: 'V = √((e + u)/(0.0007·D))',
    letters: 'V speed in mph, e cant in in, u unbalance in in, D degree in °',
    remark: 'standard gauge',
    source: '49 CFR 213.57(b) and Appendix A Table 1',
    compute: ({ degree, cant, unbalance }) => [
      Math.sqrt((cant + unbalance) / INCH / (0.0007 * ((degree * 180) / Math.PI))) * MPH,
    ],
  },
  {
    id: 'centrifugal-force',
    inputs: [input('mass', 'mass', positive), speed, radius],
    results: [result('force', 'force'), result('share', 'ratio')],
    equation: 'F = m·v²/R;  q = v²/(g·R)',
    letters: 'F force, m mass, v speed, R radius, q share, g gravity',
    remark: 'q is a share of the weight',
    source: 'mechanics',
    compute: ({ mass, speed: v, radius: r }) => [centrifugalForce(mass, v, r), (v * v) / (GRAVITY * r)],
  },
  {
    id: 'overturning-speed',
    inputs: [
      radius,
      base,
      input('height', 'length', positive),
      input('cant', 'length', { low: -0.3, high: 0.3, default: 0 }),
      input('lean', 'length', { low: -1, high: 1, default: 0 }),
    ],
    results: [result('speed', 'speed')],
    equation: 'v = √(g·R·tan(θ + φ));  φ = atan((b/2 − y)/h);  θ = asin(e/b)',
    letters:
      'v speed, g gravity, R radius, θ slope-of-the-track, φ slope-to-the-centre, b base, y lean, h height, e cant',
    remark: 'level and upright: √(g·R·b/(2·h))',
    source: 'moments about the outer wheel contact',
    compute: ({ radius: r, base: b, height: h, cant, lean }) => {
      if (Math.abs(cant) > b) return { symbol: 'cant', found: `${cant}`, expected: 'less than the base' };
      const v = overturningSpeed(r, b, h, cant, lean);
      if (v === 0) return { symbol: 'lean', found: `${lean}`, expected: 'less: the car tips standing still' };
      return [v];
    },
  },
  {
    id: 'lean-to-lift',
    inputs: [
      input('mass', 'mass', positive),
      input('people', 'mass', positive),
      input('height', 'length', positive),
      base,
      input('offset', 'length', { low: -1, high: 1, default: 0 }),
      input('cant', 'length', { low: -0.3, high: 0.3, default: 0 }),
      input('sideways', 'acceleration', { low: 0, high: 20, default: 0 }),
      input('wind', 'ratio', { low: 0, high: 2, default: 0 }),
      input('evenness', 'ratio', { low: 0, high: 1, default: 1 }),
      input('roll', 'ratio', { low: 1, high: 100, default: 1 }),
    ],
    results: [result('lean', 'length')],
    equation:
      'y = M/m·(ε·b/(2·ρ) − |h·tan(θ − ψ) + o| − h·w/n);  ψ = atan(a/g);  θ = asin(e/b);  n = cos(θ) + a/g·sin(θ)',
    letters:
      'y lean, M mass, m people, ε evenness, b base, ρ roll, h height, θ slope-of-the-track, ψ slope-of-what-is-felt, o offset, w wind, n share-of-the-weight-that-presses, a sideways, g gravity, e cant',
    remark: 'negative: lifted already',
    source: 'moments about the rail contact',
    compute: (i) => {
      if (i.people > i.mass)
        return { symbol: 'people', found: `${i.people}`, expected: 'at most the mass of the whole' };
      if (Math.abs(i.cant) > i.base / 2)
        return { symbol: 'cant', found: `${i.cant}`, expected: 'at most half the base' };
      return [
        leanToLift({
          mass: i.mass,
          people: i.people,
          height: i.height,
          base: i.base,
          offset: i.offset,
          cant: i.cant,
          sideways: i.sideways,
          wind: i.wind,
          evenness: i.evenness,
          roll: i.roll,
        }),
      ];
    },
  },
  {
    id: 'tilt-to-height',
    inputs: [
      input('angle', 'angle', { low: 0, open: true, high: RIGHT - 0.01 }),
      base,
      input('offset', 'length', { low: -1, high: 1, default: 0 }),
    ],
    results: [result('height', 'length')],
    equation: 'h = (b/2 − y)/tan(α)',
    letters: 'h height, b base, y offset, α angle',
    source: 'moments about the lower wheel contact as the upper wheel lifts',
    compute: ({ angle, base: b, offset }) => {
      const h = centreHeightFromTilt(angle, b, offset);
      return h > 0 ? [h] : { symbol: 'offset', found: `${offset}`, expected: 'less than half the base' };
    },
  },
  {
    id: 'radius-of-degree',
    inputs: [input('degree', 'angle', { low: 0, open: true, high: Math.PI })],
    results: [result('radius', 'length')],
    equation: 'R = 50/sin(D/2)',
    letters: 'R radius in ft, D degree',
    remark: 'a chord of 100 ft',
    source: 'chord definition of the degree of curve; Searles, Field Engineering',
    compute: ({ degree }) => [radiusOfDegree(degree)],
  },
  {
    id: 'degree-of-radius',
    inputs: [input('radius', 'length', { low: 15.24 })],
    results: [result('degree', 'angle')],
    equation: 'D = 2·asin(50/R)',
    letters: 'D degree, R radius in ft',
    remark: 'a chord of 100 ft',
    source: 'chord definition of the degree of curve; Searles, Field Engineering',
    compute: ({ radius: r }) => [degreeOfRadius(r)],
  },
  {
    id: 'radius-of-versine',
    inputs: [input('chord', 'length', positive), input('versine', 'length', positive)],
    results: [result('radius', 'length')],
    equation: 'R = c²/(8·v) + v/2',
    letters: 'R radius, c chord, v versine',
    source: 'geometry of the circle',
    compute: ({ chord, versine }) =>
      versine > chord / 2
        ? { symbol: 'versine', found: `${versine}`, expected: 'at most half the chord' }
        : [radiusFromVersine(chord, versine)],
  },
  {
    id: 'versine-of-radius',
    inputs: [input('chord', 'length', positive), radius],
    results: [result('versine', 'length')],
    equation: 'v = R − √(R² − c²/4)',
    letters: 'v versine, R radius, c chord',
    source: 'geometry of the circle',
    compute: ({ chord, radius: r }) =>
      chord > 2 * r
        ? { symbol: 'chord', found: `${chord}`, expected: 'at most twice the radius' }
        : [versineOfRadius(chord, r)],
  },
];
