/** Riders as people write them: ages of infants, a child on a lap. */
import { describe, expect, it } from 'vitest';
import type { Outing } from '../../../engine/outing/types.ts';
import { changedExample, type Paper } from '../../support/changed-examples.ts';

/** Sunday steam with these riders on its first car. */
const withRiders = (...riders: Paper[]): Promise<Outing> =>
  changedExample('steam-light', (paper) => {
    paper.riders = riders.map((r) => ({ typical: 'child', vehicle: 'car-1', seat: '2', ...r }));
  });
const ageOf = async (age: unknown): Promise<number | undefined> =>
  (await withRiders({ name: 'Ann', age })).riders[0].age;

describe('an age', () => {
  it.each([
    [7, 7],
    ['7', 7],
    ['7 years', 7],
    ['7 years old', 7],
    [0.5, 0.5],
    ['8 months', 8 / 12],
    ['18 mo', 1.5],
    ['18 months old', 1.5],
    ['12', 12],
    ['2 y 6 m', 2.5],
    ['1 year 4 months', 16 / 12],
    [0, 0],
  ])('%j is read', async (written, years) => expect(await ageOf(written)).toBeCloseTo(years, 12));

  it.each(['', 'young', '8 weeks', '-1', -1, 131, '1600 months', true])('%j is refused', async (written) =>
    expect(ageOf(written)).rejects.toThrow(/an age from 0 to 130 years/),
  );

  it('under twelve makes a child, in months too', async () =>
    expect(
      (await withRiders({ name: 'Ann', typical: undefined, weight: '20 lb', age: '8 months' })).riders[0],
    ).toMatchObject({ ageGroup: 'child' }));
});

describe('a seat', () => {
  const eve = { name: 'Eve', typical: 'woman' };
  it('bears a child on the lap of the adult who holds it, whoever is named first', async () => {
    const ann = { name: 'Ann', heldBy: 'Eve' };
    for (const both of [
      [eve, ann],
      [ann, eve],
    ])
      expect((await withRiders(...both)).riders).toHaveLength(2);
  });
  it('is refused to two who do not hold each other', () =>
    expect(withRiders(eve, { name: 'Ann' })).rejects.toThrow(/heldBy/));
  it('is refused to a second child on the same lap, held by another', () =>
    expect(withRiders(eve, { name: 'Ann', heldBy: 'Ida' })).rejects.toThrow(/taken already/));
});
