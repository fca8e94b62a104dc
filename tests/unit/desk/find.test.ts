/** The search: each of the trade's words, US or UK, leads to the room that answers. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { entriesIn } from '../../../desk/find/entries.ts';
import { find } from '../../../desk/find/find.ts';
import { factKinds } from '../../../engine/questions/findings.ts';
import { glossary } from '../../../words/glossary.ts';
import { sumWords } from '../../../words/sums.ts';

const rooms = (sought: string): string[] => find(sought, 'us').map((e) => e.room);

describe('search', () => {
  it.each([
    ['seat', '#builder/seat'],
    ['vacuum cylinder', '#builder/cylinder'],
    ['which chain', '#builder/chain'],
    ['how many cars', '#answer'],
    ['how far to stop', '#answer'],
    ['runaway', '#parting'],
    ['drawbar', '#couplers'],
    ['coupling', '#couplers'],
    ['passengers', '#train/people'],
    ['carriage', '#train'],
    ['consist', '#train'],
    ['caboose', '#train'],
    ['brakeman', '#crew'],
  ])('%s leads to %s first', (sought, room) => {
    expect(rooms(sought)[0]).toBe(room);
  });

  it.each([
    ['truck', 'bogie'],
    ['coupler', 'coupling'],
    ['conductor', 'guard'],
    ['grade', 'gradient'],
    ['tie', 'sleeper'],
    ['switch', 'points'],
    ['cant', 'superelevation'],
    ['slip', 'wheelslip'],
    ['throttle', 'regulator'],
    ['power', 'horsepower'],
    ['fuel', 'petrol'],
    ['transition', 'easement'],
    ['frost', 'rain'],
  ])('%s and %s find each what the other finds first', (us, uk) => {
    const [here, there] = [us, uk].map((word) => find(word, 'us').map((e) => e.id));
    expect(here).toContain(there[0]);
    expect(there).toContain(here[0]);
  });

  it.each([
    ['gradiant', 'gradient'],
    ['cilinder', 'cylinder'],
    ['stoping distence', 'stopping distance'],
    ['supperelevation', 'superelevation'],
  ])('%s is taken for %s', (slip, word) => {
    expect(rooms(slip)).toContain(rooms(word)[0]);
  });

  it('says nothing rather than anything', () => {
    expect(find('xyzzy', 'us')).toEqual([]);
    expect(find('  ', 'us')).toEqual([]);
  });

  it('knows every sum, finding and word, each once, and speaks on the reader’s shore', () => {
    const entries = entriesIn('uk');
    const ids = entries.map((e) => e.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of Object.keys(sumWords)) expect(ids).toContain(`sum ${id}`);
    for (const code of Object.keys(factKinds)) expect(ids).toContain(`finding ${code}`);
    expect(entries.filter((e) => /[{}]/.test(e.title + e.tells))).toEqual([]);
  });

  it('has the words of the book', () => {
    const book = readFileSync(new URL('../../../docs/glossary.md', import.meta.url), 'utf8');
    const rows = glossary.map(({ word, meaning, elsewhere }) => `| ${word} | ${meaning} | ${elsewhere} |`);
    expect(
      book
        .split('\n')
        .filter((l) => l.startsWith('|'))
        .slice(2),
    ).toEqual(rows.map((row) => row.replace('|  |', '| |')));
  });
});
