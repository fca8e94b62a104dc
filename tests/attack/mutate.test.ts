/** A changed document is made of its chance alone, whatever was changed before: else no input is had again by its number. */
import { expect, it } from 'vitest';
import { examplePaper } from '../support/papers.ts';
import { chanceOf, changedJson } from './mutate.ts';

it('is the same for the same chance, after a hundred thousand others too, and never holds itself', async () => {
  const paper = await examplePaper('heavy-air');
  const small = { a: [1], b: { c: '2 ft' } };
  const of = (seed: number): string => JSON.stringify(changedJson(seed % 2 ? paper : small, chanceOf(seed)));
  const first = Array.from({ length: 400 }, (_, seed) => of(seed));
  // Documents that are changed again and again: so an odd value gets changes of its own.
  let again: unknown = small;
  for (let seed = 0; seed < 100_000; seed++) again = seed % 50 ? changedJson(again, chanceOf(seed)) : small;
  expect(Array.from({ length: 400 }, (_, seed) => of(seed))).toEqual(first);
}, 60_000);
