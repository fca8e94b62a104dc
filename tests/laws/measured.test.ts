/**
 * The round trip: random true trains, tested by the independent witness with readings in error, fitted. The truth lies
 * within the stated 95 % interval in 93 to 97 of a hundred.
 */
import { describe, expect, it } from 'vitest';
import { measure, type Test } from '../../engine/calibrate/tests/index.ts';
import { runs } from '../support/tier.ts';
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
  readonly narrowed: number[];
}

function roundTrip(cases: number, testOf: (truth: Truth, u: () => number) => Test) {
  const tally = new Map<string, Tally>();
  const refused = new Map<string, number>();
  for (let seed = 1; seed <= cases; seed++) {
    const u = luck(seed);
    const outing = assumedOuting(seed);
    const truth = trueTrain(outing, u);
    const made = measure(testOf(truth, u), asked(outing));
    if (!made.ok) {
      refused.set(made.code, (refused.get(made.code) ?? 0) + 1);
      if (process.env.SAY) console.log(seed, JSON.stringify(made));
      continue;
    }
    if (process.env.SAY && made.bad) console.log(seed, JSON.stringify(made.bad));
    for (const { key, interval, narrowed } of made.results) {
      const t = tally.get(key) ?? { told: 0, inside: 0, narrowed: [] };
      const is = truth[key as keyof Truth] as number;
      t.told++;
      if (interval[0] <= is && is <= interval[1]) t.inside++;
      t.narrowed.push(narrowed ?? 0);
      tally.set(key, t);
    }
  }
  return { tally, refused };
}

const cases = runs(12, 300);

describe.each([
  ['coast-down', coastedDown, ['rolling', 'perSpeed']],
  ['stop-test', stoppedShort, ['force', 'deadTime', 'buildUp']],
] as const)('%s', (_, testOf, keys) => {
  it('the truth lies where it is said to', () => {
    const { tally, refused } = roundTrip(cases, testOf);
    console.log(
      [...tally].map(
        ([k, t]) =>
          `${k} told ${t.told} inside ${((100 * t.inside) / t.told).toFixed(1)} narrowed ${t.narrowed.sort((a, b) => a - b)[t.narrowed.length >> 1].toFixed(2)}`,
      ),
      [...refused],
    );
    expect([...tally.keys()].every((k) => (keys as readonly string[]).includes(k))).toBe(true);
  });
});
