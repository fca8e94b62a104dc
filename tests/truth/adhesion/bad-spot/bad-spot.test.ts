import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { badSpotAdds } from '../../../../engine/things/adhesion/bad-spot.ts';
import { printedIn } from '../../../support/measured.ts';

/** Stop by small steps of time, m: adhesion-limited, with a spot from `from` on. */
function stop(
  speed: number,
  adhesion: number,
  fall: number,
  spot?: { from: number; length: number; factor: number },
) {
  const dt = 1e-5;
  let v = speed;
  let s = 0;
  while (v > 0) {
    const on = spot && s >= spot.from && s < spot.from + spot.length;
    const a = 9.80665 * (adhesion * (on ? spot.factor : 1) - fall);
    s += v * dt - (a * dt * dt) / 2;
    v -= a * dt;
  }
  return s;
}

const pages = printedIn(import.meta.url, 'B');
const abstract = printedIn(import.meta.url, 'A');
const law = printedIn(import.meta.url, 'D');

describe('a bad spot', () => {
  for (const [speed, adhesion, fall, length, factor] of [
    [3, 0.2, 0, 1, 0.25],
    [3, 0.13, 0.02, 2, 0.25],
    [4, 0.17, 0.03, 1.5, 0.1],
    [4, 0.17, -0.02, 1.5, 0.4],
  ]) {
    it(`of ${length} m at ${speed} m/s, adhesion ${adhesion}, fall ${fall}`, () => {
      const clean = stop(speed, adhesion, fall);
      const spoiled = stop(speed, adhesion, fall, { from: 0.3, length, factor });
      law.figure('longer by', badSpotAdds(length, factor, adhesion, fall), spoiled - clean, 0.001, 'm');
    });
  }

  it('a stop that ends on the spot loses less', () => {
    const clean = stop(3, 0.2, 0);
    const spoiled = stop(3, 0.2, 0, { from: clean - 0.3, length: 6, factor: 0.25 });
    expect(spoiled - clean).toBeLessThan(badSpotAdds(6, 0.25, 0.2, 0));
  });

  it('never ends where adhesion does not hold the fall', () => {
    expect(badSpotAdds(6, 0.25, 0.03, 0.03)).toBe(Infinity);
  });

  it('is as bad as printed: a leaf a quarter, damp leaf a tenth of wet, damp two fifths of dry', () => {
    const { factor } = assumedValues.badSpot;
    abstract.figure('a leaf', factor.value, 1 / 4, 0);
    pages.figure('damp leaf, of wet', factor.low, 0.015 / 0.15, 1e-10);
    pages.figure('damp, of dry', factor.high, 0.2 / 0.5, 1e-10);
  });
});
