/** Files of records, and lists to inspect by, changed by chance: whatever is otherwise is found, and nothing crashes. */
import { expect, it } from 'vitest';
import { exampleLists } from '../../data/inspection-lists/index.ts';
import { lackingIn } from '../../desk/inspect/inspection.ts';
import { readList } from '../../papers/inspection/read.ts';
import { readStoreFile, storeFile } from '../../records/file.ts';
import { look, take } from '../../records/ledger.ts';
import { personNamed } from '../../records/names.ts';
import { memoryStore } from '../../records/stores/memory.ts';
import { tellFault } from '../../words/records/verified.ts';
import { author, clockFrom, noted, said } from '../support/club-records.ts';
import { runs } from '../support/tier.ts';
import { chanceOf, changedJson, changedText } from './mutate.ts';

const [store, ada, clock] = [memoryStore(), await author(), clockFrom()];
for (let i = 0; i < 4; i++) await noted(store, ada, clock, `note ${i}, “ä 🚂”`);
await said(store, ada, clock, 'certificate', { what: 'chains', of: 'Car', on: '2026-01-01', by: 'x' });
await personNamed(store, 'An Invented Person');
const text = await storeFile(await look(store), await store.names());
const bytes = (of: string): Uint8Array => new TextEncoder().encode(of);

it('a file of records that is otherwise is found out, in words, and no broken record is taken', async () => {
  for (let seed = 1; seed <= runs(150, 20_000); seed++) {
    const chance = chanceOf(seed);
    const lines = text.split('\n');
    const at = Math.floor(chance.share() * (lines.length - 1));
    const changed =
      chance.share() < 0.5
        ? changedText(text, chance)
        : lines
            .map((line, i) => (i === at ? JSON.stringify(changedJson(JSON.parse(line), chance)) : line))
            .join('\n');
    const read = await readStoreFile(bytes(changed));
    const same = new TextDecoder().decode(bytes(changed)) === text;
    expect(read.faults.length > 0, `${seed}`).toBe(!same);
    const known = { ...read.verified, names: read.names };
    for (const fault of read.faults)
      expect(
        tellFault(fault, known, (row) => row + 2),
        `${seed}`,
      ).not.toMatch(/undefined|\[object/);
    const here = memoryStore();
    await take(
      here,
      read.verified.entries.map(({ row }) => row),
    );
    expect(
      (await look(here)).faults.filter(({ what }) => what === 'altered'),
      `${seed}`,
    ).toEqual([]);
  }
});

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
