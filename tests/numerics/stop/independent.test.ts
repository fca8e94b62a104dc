/**
 * Grade C: the stop and the coast against independent code, a plain vehicle-by-vehicle right-hand side run by `odex` at
 * 1e-6 (tests/support/plain-stop.ts shares only input types with the engine).
 */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { coast } from '../../../engine/motion/coast.ts';
import { emptyTrace } from '../../../engine/motion/model.ts';
import { likely } from '../../../engine/motion/scenario.ts';
import { stopInto } from '../../../engine/motion/stop.ts';
import { resistanceTerms } from '../../../engine/things/train/resistance.ts';
import { beside } from '../../support/measured.ts';
import { integrate } from '../../support/odex.ts';
import { plainStop } from '../../support/plain-stop.ts';
import { drawer, randomOuting } from '../../support/random-outings.ts';
import { modelFor, ready } from '../../support/ready.ts';
import { runs } from '../../support/tier.ts';

const CASES = runs(100, 500);
const TOLERANCE = 1e-6;
const noReaction = exact(0);

/** Distance by odex in time, stepped to the jump at the end of the reaction and then until standstill. */
function referenceStop(plain: ReturnType<typeof plainStop>, s0: number, v0: number): number {
  const f = (t: number, [s, v]: number[]): number[] => [v, plain.acceleration(t, s, v)];
  const reacting = (t: number, y: number[]): number[] => f(Math.min(t, plain.reaction - 1e-9), y);
  let t = plain.reaction;
  let y = integrate(reacting, 0, [s0, v0], t, TOLERANCE);
  const untilEased = (x: number, z: number[]): number[] => f(Math.min(x, plain.eased - 1e-9), z);
  while (t < plain.eased - 1e-9) {
    const to = Math.min(t + 0.25, plain.eased);
    const next = integrate(untilEased, t, y, to, TOLERANCE);
    if (next[1] <= 0) break;
    y = next;
    t = to;
  }
  for (; t < 300; t += 1) {
    const next = integrate(f, t, y, t + 1, TOLERANCE);
    if (next[1] <= 0) break;
    y = next;
  }
  // Standstill inside the last second: Newton's rule on the speed.
  let left = 0;
  for (let i = 0; i < 6; i++) {
    const [s, v] = left > 0 ? integrate(f, t, y, t + left, TOLERANCE) : y;
    const gain = -v / plain.acceleration(t + left, s, v);
    if (Math.abs(gain) < 1e-5) return s + (v * gain) / 2 - s0;
    left = Math.min(1, Math.max(0, left + gain));
  }
  return integrate(f, t, y, t + left, TOLERANCE)[0] - s0;
}

describe('the stop against odex on a plain right-hand side', () => {
  const errors: number[] = [];
  for (let seed = 1; seed <= CASES; seed++) {
    const r = ready(randomOuting(seed));
    const draw = drawer(seed + 999);
    const s0 = draw(0, r.context.line.length * 0.9);
    const v0 = draw(0.5, 6);
    const trace = emptyTrace();
    stopInto(modelFor(r), s0, v0, trace);
    if (!Number.isFinite(trace.distance)) continue;
    const { assumed, conditions } = r.outing;
    const plain = plainStop(
      r.context.line,
      r.context.loaded,
      r.prepared.brakes.groups,
      assumed.adhesion.dry,
      conditions.reaction,
      assumed,
      likely,
    );
    const reference = referenceStop(plain, s0, v0);
    errors.push(Math.abs(trace.distance - reference) / reference);
  }
  errors.sort((a, b) => a - b);
  beside(import.meta.url, 'a stop', '`odex` on a plain vehicle-by-vehicle right-hand side', errors);
  const at = (q: number): number => errors[Math.floor(q * (errors.length - 1))];

  it('covers at least 96 of 100 stops', () => expect(errors.length).toBeGreaterThanOrEqual(0.96 * CASES));
  it('agrees to 2e-4 in the median', () => expect(at(0.5)).toBeLessThan(2e-4));
  it('agrees to 1e-3 in 99 of 100', () => expect(at(0.99)).toBeLessThan(1e-3));
  it('agrees to 3e-3 in the worst', () => expect(at(1)).toBeLessThan(3e-3));
});

describe('the coast against odex in distance', () => {
  it('agrees to 1e-3 of the speed over random trains and lines', () => {
    const errors: number[] = [];
    for (let seed = 1; seed <= CASES; seed++) {
      const { outing, context, prepared } = ready(randomOuting(seed + 5000));
      const draw = drawer(seed);
      const s0 = Math.floor(draw(0, context.line.length * 0.5));
      const v0 = draw(1, 5);
      const to = s0 + 30;
      const window = { ...prepared.potential, count: 2 * to + 1 };
      const rolls = coast(
        window,
        context.loaded.effectiveMass,
        resistanceTerms(context.loaded.vehicles, 0),
        s0,
        v0,
      );
      const plain = plainStop(
        context.line,
        context.loaded,
        [],
        outing.assumed.adhesion.dry,
        noReaction,
        outing.assumed,
        likely,
      );
      const f = (s: number, [u]: number[]): number[] => [
        plain.acceleration(1, s, Math.sqrt(2 * Math.max(u, 0))),
      ];
      const [u] = integrate(f, s0, [(v0 * v0) / 2], to, TOLERANCE);
      expect(u > 1e-3, `seed ${seed} rolls on`).toBe(u > 1e-3 && rolls.distance === Infinity);
      if (rolls.endSpeed < 0.5) continue;
      errors.push(Math.abs(Math.sqrt(2 * u) - rolls.endSpeed) / rolls.endSpeed);
    }
    beside(import.meta.url, 'speed after a coast', '`odex` in distance', errors);
    expect(errors.length).toBeGreaterThan(runs(50, 300));
    expect(Math.max(...errors)).toBeLessThan(1e-3);
  });
});
