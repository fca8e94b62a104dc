/** docs/accuracy.md holds lines of every test that measures, and no other: what they say, each test asks itself. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import { accuracyPage, rowsOf } from '../../scripts/pages/accuracy.ts';

const tests = new URL('../', import.meta.url).pathname;
const text = readFileSync(new URL('../../docs/accuracy.md', import.meta.url), 'utf8');
const rows = rowsOf(text);
/** Folder of a source, or test beside independent code, under tests. */
const where = rows.map((row) => {
  const last = row[row.length - 1];
  return existsSync(`${tests}${last}.test.ts`) ? last : `truth/${last}`;
});
const under = (folder: string, name: string): string[] =>
  readdirSync(`${tests}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((f) => f.endsWith(name))
    .map((f) => `${folder}/${f}`);

describe('the accuracy page', () => {
  it('is laid out as npm run accuracy does it', () => expect(accuracyPage(rows)).toBe(text));

  it('has a line of every source under tests/truth', () => {
    const folders = under('truth', 'SOURCE.md').map((f) => dirname(f));
    expect(folders.length).toBeGreaterThan(70);
    expect(folders.filter((f) => !where.some((w) => w === f || w.startsWith(`${f}/`)))).toEqual([]);
  });

  it('has lines of every test that compares with independent code', () => {
    const measuring = ['numerics', 'witness', 'truth']
      .flatMap((folder) => under(folder, '.test.ts'))
      .filter((f) => /beside\(/.test(readFileSync(`${tests}${f}`, 'utf8')));
    expect(measuring.length).toBeGreaterThan(10);
    expect(measuring.filter((f) => !where.includes(f.replace('.test.ts', '')))).toEqual([]);
  });

  it('names no source and no test that is gone', () =>
    expect(where.filter((w) => !existsSync(`${tests}${w}`) && !existsSync(`${tests}${w}.test.ts`))).toEqual(
      [],
    ));

  it('grades each source as its own page does', () => {
    const graded = rows.filter((row) => /^[ABCD]$/.test(row[2]));
    expect(graded.length).toBeGreaterThan(70);
    const otherwise = graded.filter((row) => {
      const source = readFileSync(`${tests}truth/${row[row.length - 1]}/SOURCE.md`, 'utf8');
      return !new RegExp(`[Gg]rade:? ${row[2]}\\b|[|(,;] ?${row[2]}\\b`).test(source);
    });
    expect(otherwise).toEqual([]);
  });
});
