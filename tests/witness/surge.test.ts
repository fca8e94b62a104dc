/** Surge brakes beside a train of separate vehicles on sprung couplers, in which nothing is settled. */
import { describe, expect, it } from 'vitest';
import { bundled } from '../support/bundled.ts';
import { runs } from '../support/tier.ts';

const { comparePushed } = await bundled<typeof import('./against/pushed.ts')>('../witness/against/pushed.ts');

describe('a stop with brakes that the push of the couplers works', () => {
  // Of the first the rear is in a sharp curve that its front has left.
  const seeds = [590, ...Array.from({ length: runs(60, 589) }, (_, i) => i + 1)];
  const all = seeds.flatMap((seed) => comparePushed(seed, 3));
  /** Where no wheel of theirs comes near to sliding: springs know no rail. */
  const rolling = all.filter(({ hardest, engine }) => hardest > 0 && hardest < 0.74 && engine < Infinity);

  it('is told no shorter than separate vehicles need', () => {
    const short = rolling.filter(
      ({ engine, witness }) => engine < 0.985 * witness && witness - engine > 0.15,
    );
    expect(short).toEqual([]);
    expect(rolling.length).toBeGreaterThan(runs(100, 1000));
  });

  it('nor often much longer', () => {
    const long = rolling.filter(({ engine, witness }) => engine > 1.1 * witness);
    expect(long.length).toBeLessThan(0.05 * rolling.length);
  });

  it('ends where theirs ends', () => {
    const apart = all.filter(({ engine, witness }) => engine < Infinity && witness === Infinity);
    expect(apart).toEqual([]);
  });
});
