/** The sum of a stop. By itself, since each answer holds its stops against it; the other sums of motion are for whoever reads them. */
import { GRAVITY } from '../base/constants.ts';
import { input, result, type Sum, type SumSymbol } from '../base/sum.ts';

export const grade: SumSymbol = input('grade', 'grade', { low: -0.15, high: 0.15, default: 0 });
export const speed: SumSymbol = input('speed', 'speed', { low: 0, open: true, high: 60 });

/** A stop that ends before the brake is full on. */
const stood = (distance: number, time: number): number[] => [distance, time, distance];

export const stoppingDistance: Sum = {
  id: 'stopping-distance',
  inputs: [
    speed,
    input('deceleration', 'acceleration', { low: 0, open: true, high: 10 }),
    input('reaction', 'time', { low: 0, high: 30, default: 0 }),
    input('dead-time', 'time', { low: 0, high: 60, default: 0 }),
    input('build-up', 'time', { low: 0, high: 120, default: 0 }),
    grade,
    input('resistance', 'specificForce', { low: 0, high: 0.2, default: 0 }),
    input('rotating-share', 'ratio', { low: 0, high: 2, default: 0 }),
  ],
  results: [result('distance', 'length'), result('time', 'time'), result('before-brake', 'length')],
  equation:
    's = s₁ + v₃²/(2·(b + p));  s₁ = v·t₁ + u·t₁²/2 + v₁·t₂ − p·t₂²/2 + v₂·t₃ − p·t₃²/2 − b·t₃²/6;  t = t₁ + t₂ + t₃ + v₃/(b + p);  b = a/(1 + γ);  p = g·(i + r)/(1 + γ);  u = max(0, −p);  v₁ = v + u·t₁;  v₂ = v₁ − p·t₂;  v₃ = v₂ − p·t₃ − b·t₃/2',
  letters:
    's distance, s₁ before-brake, t time, v speed, a deceleration, t₁ reaction, t₂ dead-time, t₃ build-up, i grade, r resistance, γ rotating-share, g gravity, b braking-with-the-wheels, p pull-of-grade-and-resistance, u gain-on-a-fall, v₁ speed-after-the-reaction, v₂ speed-as-the-brake-begins, v₃ speed-as-it-is-full-on',
  remark: 'power is on in the reaction; at a stand before the brake is full on it ends there',
  source: 'kinematics, integrated exactly; build-up linear as in IEEE 1698-2009 clause 3',
  compute: (given) => {
    const { speed: v0, reaction, 'dead-time': dead, 'build-up': tb, 'rotating-share': share } = given;
    const b = given.deceleration / (1 + share);
    const against = GRAVITY * (given.grade + given.resistance);
    const pull = against / (1 + share);
    const net = b + pull;
    if (net <= 0)
      return {
        symbol: 'deceleration',
        found: `${given.deceleration}`,
        expected: `more than the fall of ${(-against).toFixed(3)} m/s²: the brake does not hold`,
      };
    // Power is on in the reaction: a rise does not slow the train, a fall speeds it up.
    const gain = Math.max(0, -pull);
    const reactionRun = v0 * reaction + (gain * reaction * reaction) / 2;
    const v1 = v0 + gain * reaction;
    const deadRun = v1 * dead - (pull * dead * dead) / 2;
    const v2 = v1 - pull * dead;
    if (v2 <= 0) return stood(reactionRun + (v1 * v1) / (2 * pull), reaction + v1 / pull);
    const v3 = v2 - pull * tb - (b * tb) / 2;
    if (v3 < 0) {
      const rise = b / tb;
      const t = (2 * v2) / (pull + Math.sqrt(pull * pull + 2 * rise * v2));
      return stood(reactionRun + deadRun + t * (v2 - t * (pull / 2 + (rise * t) / 6)), reaction + dead + t);
    }
    const rampRun = v2 * tb - (pull * tb * tb) / 2 - (b * tb * tb) / 6;
    return [
      reactionRun + deadRun + rampRun + (v3 * v3) / (2 * net),
      reaction + dead + tb + v3 / net,
      reactionRun + deadRun + rampRun,
    ];
  },
};
