/** Rail by place: the engine is never shorter than the witness, and hardly longer. */
import { beforeAll, describe, expect, it } from 'vitest';
import { bundled } from '../support/bundled.ts';
import { beside } from '../support/measured.ts';
import { runs } from '../support/tier.ts';
import type { PlaceCompared } from './against/places.ts';

describe('stops over rail in more than one state', () => {
  let all: PlaceCompared[];
  beforeAll(async () => {
    const { comparePlaces } = await bundled<typeof import('./against/places.ts')>(
      '../witness/against/places.ts',
    );
    all = Array.from({ length: runs(20, 200) }, (_, i) => comparePlaces(i + 1, 4)).flat();
  }, 600_000);

  const ending = (): PlaceCompared[] => all.filter((c) => c.witness < Infinity);

  it('are kept for the page', () => {
    const shorter = ending().map(({ engine, witness }) => Math.max(0, 1 - engine / witness));
    const by = 'the witness, axle by axle in small steps';
    beside(import.meta.url, 'stops over rail in more than one state: shorter than theirs', by, shorter);
  });

  it('are looked at', () => expect(ending().length).toBeGreaterThan(0.5 * all.length));

  const shorter = (share: number): PlaceCompared[] =>
    all.filter(({ engine, witness }) => engine < Math.min((1 - share) * witness, witness - 0.05));

  it('are never more than 2 % or 5 cm shorter, and more than 1 % one in two hundred at most', () => {
    expect(shorter(0.02)).toEqual([]);
    expect(shorter(0.01).length).toBeLessThanOrEqual(all.length / 200);
  });

  it('are no more than 15 % longer in 95 % of cases', () => {
    const longer = ending().filter(
      ({ engine, witness }) => engine > Math.max(1.15 * witness, witness + 0.05),
    );
    expect(longer.length).toBeLessThanOrEqual(0.05 * all.length);
  });
});
