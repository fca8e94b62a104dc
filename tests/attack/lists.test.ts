/** Lists to inspect by, changed by chance: read, or refused in words. */
import { expect, it } from 'vitest';
import { exampleLists } from '../../data/inspection-lists/index.ts';
import { lackingIn } from '../../desk/inspect/inspection.ts';
import { readList } from '../../papers/inspection/read.ts';
import { runs } from '../support/tier.ts';
import { chanceOf, changedJson } from './mutate.ts';

it('a changed list is read or refused in words', () => {
  const lists = Object.values(exampleLists);
  for (let seed = 1; seed <= runs(150, 20_000); seed++) {
    const chance = chanceOf(seed);
    const read = readList(changedJson(chance.one(lists), chance));
    if (read.ok) expect(lackingIn(read.value, {}).length, `${seed}`).toBe(read.value.items.length);
    else expect(read.troubles.every(({ found, expected }) => found !== '' && expected !== '')).toBe(true);
    if (!read.ok) expect(read.troubles.length, `${seed}`).toBeGreaterThan(0);
  }
});
