/** A file of everything that is none says so in words. */
import { expect, it } from 'vitest';
import { readEverything } from '../../../web/parts/everything.ts';

it.each([
  [{ a: 1 }, 'found a group of fields'],
  [undefined, 'found nothing'],
  ['1', 'found "1"'],
  [2, 'found 2'],
])('of version %j', async (version, words) => {
  const read = await readEverything(
    JSON.stringify({ heedway: 'everything', version, outing: {}, vehicles: [] }),
    'all.json',
  );
  expect(read.ok ? '' : read.problems.map((p) => p.message).join()).toContain(words);
});
