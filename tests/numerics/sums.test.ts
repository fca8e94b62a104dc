/** Stops of the sum on an even grade against a general-purpose integrator that knows only the forces. */
import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../engine/base/constants.ts';
import type { Sum } from '../../engine/base/sum.ts';
import { evaluateSum, findSum } from '../../engine/sums/register.ts';
import { beside } from '../support/measured.ts';
import { drawer } from '../support/random-outings.ts';
import { march } from '../support/rk4.ts';

/** Way to standstill in steps of a millisecond: power on in the reaction, then whatever brake is on. */
function witnessed(i: Readonly<Record<string, number>>): number {
  const rate = (t: number): number => {
    const on = t - i.reaction - i['dead-time'];
    const share = on <= 0 ? 0 : Math.min(1, on / i['build-up']);
    const pull = -GRAVITY * (i.grade + i.resistance);
    return (t < i.reaction ? Math.max(0, pull) : pull - share * i.deceleration) / (1 + i['rotating-share']);
  };
  const step = 1e-3;
  let state = [0, i.speed];
  let t = 0;
  for (;;) {
    const next = march((x, [, v]) => [v, rate(x)], t, state, t + step, 1);
    if (next[1] <= 0) return state[0] + (state[1] * step * state[1]) / (2 * (state[1] - next[1]));
    state = next;
    t += step;
  }
}

describe('stopping-distance', () => {
  it('agrees with the integrator within 0.1 % and 1 mm, whether or not the brake is full on at the end', () => {
    const draw = drawer(11);
    const sum = findSum('stopping-distance') as Sum;
    const errors: number[] = [];
    let early = 0;
    for (let n = 0; n < 60; n++) {
      const inputs = {
        speed: draw(0.2, 5),
        deceleration: draw(0.5, 2),
        reaction: draw(0, 2),
        'dead-time': draw(0, 1.5),
        'build-up': draw(0.1, 4),
        grade: draw(-0.03, 0.03),
        resistance: draw(0, 0.02),
        'rotating-share': draw(0, 0.3),
      };
      const outcome = evaluateSum(sum, inputs);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      const { distance } = outcome.values;
      const expected = witnessed(inputs);
      errors.push(Math.abs(distance - expected) / expected);
      expect(Math.abs(distance - expected)).toBeLessThan(1e-3 + 1e-3 * distance);
      if (outcome.values['before-brake'] === distance) early++;
    }
    beside(import.meta.url, 'the sum of a stop on one grade', '`ode-rk4` in steps of 1 ms', errors);
    expect(early).toBeGreaterThan(8);
    expect(early).toBeLessThan(52);
  });
});
