/** Sums of the swept path. */
import { GRAVITY } from '../../base/constants.ts';
import { input, notNegative, positive, result, type Sum } from '../../base/sum.ts';
import { rollAngle } from './roll.ts';
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
  {
    id: 'sway',
    inputs: [
      input('mass', 'mass', positive),
      input('centre-height', 'length', positive),
      input('aside', 'length', { ...notNegative, default: 0 }),
      input('cant', 'length', { ...notNegative, default: 0 }),
      input('contact-width', 'length', positive),
      input('radius', 'length', positive),
      input('speed', 'speed', { ...notNegative, default: 0 }),
      input('stiffness', 'moment', positive),
      input('top', 'length', positive),
    ],
    results: [result('inward', 'length'), result('outward', 'length')],
    equation:
      'i = h·max(0, φ₁);  a = h·max(0, φ₂, φ₃);  φ₁ = g·(Z·c/w + Y)/(K − g·Z);  φ₂ = g·(Y − Z·c/w)/(K − g·Z);  φ₃ = (g·(Y − Z·c/w) + Z·v²/R)/(K − g·Z);  Z = m·z;  Y = m·y',
    letters:
      'g gravity, i inward, a outward, m mass, z centre-height, y aside, c cant, w contact-width, R radius, v speed, K stiffness, h top, φ₁ roll-inward-standing, φ₂ roll-outward-standing, φ₃ roll-outward-running, Z mass-times-height, Y mass-times-aside',
    remark:
      'y: the centre of mass with people, off the middle to whichever side; what the track itself leans comes on top. It rolls about a line at the rail',
    source: 'common engineering geometry, statics',
    compute: ({
      mass,
      'centre-height': z,
      aside,
      cant,
      'contact-width': width,
      radius,
      speed,
      stiffness,
      top,
    }) => {
      const [Z, Y, lean] = [mass * z, mass * aside, cant / width];
      if (stiffness <= GRAVITY * Z)
        return { symbol: 'stiffness', found: `${stiffness}`, expected: 'springs that hold it upright' };
      const roll = (towardLow: number, push: number): number =>
        top * Math.max(0, rollAngle(stiffness, Z, Y, towardLow, push));
      return [roll(lean, 0), Math.max(roll(-lean, 0), roll(-lean, speed ** 2 / radius))];
    },
  },
];
