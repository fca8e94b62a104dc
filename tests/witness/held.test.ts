/** A train that is said to stay where it was left does, hand by hand; of one that is said to roll some do. */
import { describe, expect, it } from 'vitest';
import { bundled } from '../support/bundled.ts';
import { runs } from '../support/tier.ts';

const { compareHeld } = await bundled<typeof import('./against/held.ts')>('../witness/against/held.ts');

describe('a train left standing on brakes that do not leak off', () => {
  const all = Array.from({ length: runs(80, 800) }, (_, i) => compareHeld(i + 1));

  it('said to hold rolls in no more than one hand in a hundred, at its hardest place', () => {
    expect(all.filter(({ holds, tooMany }) => holds && tooMany)).toEqual([]);
    expect(all.filter(({ holds }) => holds).length).toBeGreaterThan(runs(20, 200));
  });

  it('said not to hold, by a fifth and more, does roll in some', () => {
    const short = all.filter(({ holds, margin }) => !holds && margin < -0.2);
    expect(short.filter(({ share }) => share < 0.01)).toEqual([]);
    expect(short.length).toBeGreaterThan(runs(20, 200));
  });
});
