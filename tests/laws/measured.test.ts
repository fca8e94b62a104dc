/**
 * The round trip: random true trains, tested by the independent witness with readings in error, fitted. The truth lies
 * within the stated 95 % interval in 93 to 97 of a hundred.
 */
import { describe, expect, it } from 'vitest';
import { measure, type Test } from '../../engine/calibrate/tests/index.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { full, runs } from '../support/tier.ts';
import {
  asked,
  assumedOuting,
  coastedDown,
  luck,
  stoppedShort,
  type Truth,
  trueTrain,
} from '../support/true-trains.ts';

interface Tally {
  told: number;
  inside: number;
  narrowed: number;
}

/** True value of a result, by its key. */
function trueOf(key: string, truth: Truth, { train }: Outing): number {
  const [what, which = '1'] = key.split('/');
  if (what === 'force')
    return truth.brake * (train.vehicles[Number(which) - 1].brakes[0].force?.value ?? NaN);
  return truth[what as 'rolling' | 'perSpeed' | 'deadTime' | 'buildUp'];
}

function roundTrip(cases: number, testOf: (truth: Truth, u: () => number) => Test): Map<string, Tally> {
  const tally = new Map<string, Tally>();
  for (let seed = 1; seed <= cases; seed++) {
    const u = luck(seed);
    const outing = assumedOuting(seed);
    const truth = trueTrain(outing, u);
    const made = measure(testOf(truth, u), asked(outing));
    if (!made.ok) continue;
    for (const { key, interval, narrowed = 1 } of made.results) {
      const t = tally.get(key) ?? { told: 0, inside: 0, narrowed: 0 };
      const is = trueOf(key, truth, outing);
      t.told++;
      if (interval[0] <= is && is <= interval[1]) t.inside++;
      t.narrowed += narrowed;
      tally.set(key, t);
    }
  }
  return tally;
}

const cases = runs(4, 300);

describe.each([
  // What each must nearly always tell, and at least how much better it is known then.
  ['coast-down', coastedDown, 'rolling', 0.35],
  ['stop-test', stoppedShort, 'force/1', 0.75],
] as const)('%s', (_, testOf, surely, narrowed) => {
  it('the truth lies where it is said to', { timeout: 400_000 }, () => {
    const tally = roundTrip(cases, testOf);
    const sure = tally.get(surely) as Tally;
    expect(sure.told).toBeGreaterThan(0.95 * cases - 1);
    expect(sure.narrowed / sure.told).toBeLessThan(narrowed);
    for (const [key, { told, inside }] of tally) {
      // Of few one more or less is much: three deviations of chance.
      const chance = 3 * Math.sqrt((0.95 * 0.05) / told);
      const off = full && told >= 200 ? 0.02 : Math.max(0.02, chance);
      const share = inside / told;
      expect(share, `${key}: ${inside} of ${told}`).toBeGreaterThanOrEqual(0.95 - off);
      if (told >= 200) expect(share, `${key}: ${inside} of ${told}`).toBeLessThanOrEqual(0.95 + off);
    }
  });
});
