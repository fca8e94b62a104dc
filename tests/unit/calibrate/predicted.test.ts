/** Stops of random true trains beside what was said of them before: few are longer than the careful figure. */
import { expect, it } from 'vitest';
import { predictedStops } from '../../../desk/measured/predicted.ts';
import { runs } from '../../support/tier.ts';
import { assumedOuting, luck, stoppedShort, trueTrain } from '../../support/true-trains.ts';

it('holds what it says', { timeout: 200_000 }, () => {
  let [stops, inside, aboutLikely] = [0, 0, 0];
  for (let seed = 1; seed <= runs(4, 100); seed++) {
    const u = luck(seed);
    const outing = assumedOuting(seed);
    const told = predictedStops(stoppedShort(trueTrain(outing, u), u), outing);
    expect(told).toHaveLength(6);
    for (const p of told) {
      stops++;
      expect(p.likely).toBeLessThan(p.careful);
      expect(p.inside).toBe(p.measured <= p.careful);
      if (p.inside) inside++;
      if (p.measured <= p.likely) aboutLikely++;
    }
  }
  // The speed was read in error too, which no figure for a stop knows of.
  expect(inside / stops).toBeGreaterThan(0.95);
  expect(aboutLikely / stops).toBeGreaterThan(0.2);
  expect(aboutLikely / stops).toBeLessThan(0.8);
});
