/** Rail by place: the engine is never shorter than the witness, and hardly longer. */
import { beforeAll, describe, expect, it } from 'vitest';
import { bundled } from '../support/bundled.ts';
import { beside } from '../support/measured.ts';
import { runs } from '../support/tier.ts';
import type { PlaceCompared } from './against/places.ts';
import type { TailPlaced } from './against/tail-places.ts';

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

describe('parted tails on rail in more than one state, their brakes on by themselves', () => {
  let firm: TailPlaced[];
  beforeAll(async () => {
    const { compareTailPlaces } = await bundled<typeof import('./against/tail-places.ts')>(
      '../witness/against/tail-places.ts',
    );
    const all = Array.from({ length: runs(30, 300) }, (_, i) => compareTailPlaces(i + 1, 4)).flat();
    firm = all.filter((t) => !t.near);
  }, 600_000);

  it('are looked at', () => expect(firm.length).toBeGreaterThan(runs(30, 300)));

  it('come to rest, or do not, as the witness says', () => {
    expect(firm.filter(({ engine, witness }) => engine.rests !== witness.rests)).toEqual([]);
  });

  const rests = (): { engine: number; witness: number }[] =>
    firm
      .filter(({ witness }) => witness.rests)
      .map(({ engine, witness }) => ({ engine: Math.abs(engine.way), witness: Math.abs(witness.way) }));

  // A wheel locks at a speed told to half a mile per hour; a truck goes onto another rail by its length, here axle by axle.
  it('end within 2 % or 5 cm, either way, but for one in two hundred, and none beyond 5 %', () => {
    const apart = (share: number) =>
      rests().filter(({ engine, witness }) => Math.abs(engine - witness) > Math.max(share * witness, 0.05));
    expect(apart(0.02).length).toBeLessThanOrEqual(Math.max(1, firm.length / 200));
    expect(apart(0.05)).toEqual([]);
  });
});
