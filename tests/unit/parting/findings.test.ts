/** What parting says of an outing: the worst of each kind, and no less than any place of it. */
import { describe, expect, it } from 'vitest';
import { openPartings, worstGap } from '../../../desk/parting.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { drawer, randomLine, randomOuting } from '../../support/random-outings.ts';
import { runs } from '../../support/tier.ts';

/** Without a chain anywhere; with or without a pipe to the cars. */
const outing = (seed: number, piped: boolean): Outing => {
  const base = randomOuting(seed, 3);
  const line = randomLine(drawer(seed), piped ? 0.008 : 0.05, piped, 400);
  return {
    ...base,
    line,
    plannedSpeed: 2,
    direction: 'forward',
    train: { ...base.train, pipeBrokenAfter: piped ? [] : [0] },
  };
};

describe('parting without chains', () => {
  it('tells of a tail that stands the longest way there is', () => {
    let told = 0;
    for (let seed = 1; seed <= runs(6, 12); seed++) {
      const look = openPartings(outing(seed, true)).look();
      const stands = look.findings.find((f) => f.code === 'tail-stands');
      if (!stands) continue;
      told++;
      const all = look.gaps.filter((g) => g.places.every((p) => p.outcome === 'stands'));
      const longest = Math.max(
        ...all.flatMap(({ gap, places }) =>
          places.map((p) => {
            const behind = outing(seed, true).train.vehicles.slice(0, gap + 1);
            return p.endFront - (p.at - behind.reduce((sum, v) => sum + v.length, 0));
          }),
        ),
      );
      const way = stands.facts['way'];
      expect(typeof way === 'object' ? way.si : 0).toBeCloseTo(longest, 6);
    }
    expect(told).toBeGreaterThan(runs(1, 2));
  });

  it('forbids where a tail runs away, and following that case in time ends the same', () => {
    let harmed = 0;
    for (let seed = 1; seed <= runs(6, 12); seed++) {
      const o = outing(seed, false);
      const partings = openPartings(o);
      const look = partings.look();
      const worst = worstGap(look.gaps);
      const play = partings.play({ gap: worst.gap, at: worst.worst.at, chained: false });
      // Unlucky, nobody counts on the head to hold the tail back.
      expect(play.together).toBe(false);
      expect(play.tail.outcome, `seed ${seed}`).toBe(worst.worst.outcome);
      // The path is recorded in small steps, the map marched over whole cells.
      expect(play.tail.topSpeed).toBeCloseTo(worst.worst.topSpeed, 4);
      const forbids = look.findings.some((f) => f.severity === 'forbids');
      const harm = look.gaps.some((g) => g.shares.stands + g.shares.rolls < 1);
      expect(forbids).toBe(harm);
      if (forbids) harmed++;
    }
    expect(harmed).toBeGreaterThan(2);
  });
});
