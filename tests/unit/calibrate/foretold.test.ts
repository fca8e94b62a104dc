/** The running record of stops, and the sheet that is published: honest with few, and without a name. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Json, takeBack } from '../../../desk/measured/apply.ts';
import { sheetRows, sumUp } from '../../../desk/measured/data-sheet.ts';
import { checksIn, keepAsCheck, runningRecord, withForetold } from '../../../desk/measured/foretold.ts';
import type { Predicted } from '../../../desk/measured/predicted.ts';
import { readSheet, sheetText } from '../../../papers/import/data-sheet.ts';
import { sheetWords } from '../../../words/measured/data-sheet.ts';
import { recordWords } from '../../../words/measured/predicted.ts';
import { examplePaper } from '../../support/papers.ts';

const stopTest: Json = JSON.parse(
  readFileSync(new URL('../../../examples/tests/stop-test.json', import.meta.url), 'utf8'),
);

const stops = (inside: number, longer: number): Predicted[] =>
  Array.from({ length: inside + longer }, (_, i) => ({
    speed: 3,
    measured: i < inside ? 8 + (i % 2) : 20,
    likely: 8.5,
    careful: 15,
    inside: i < inside,
  }));

const wordsOf = (inside: number, longer: number): string =>
  recordWords(runningRecord([stops(inside, longer)]) as never).join(' ');

describe('so many stops within the careful figure', () => {
  it('none longer of few shows little, and says how little', () => {
    expect(wordsOf(12, 0)).toContain('none was longer');
    expect(wordsOf(12, 0)).toContain('between 73 % and 100 % of stops');
    expect(wordsOf(12, 0)).toContain('about 370 stops');
    expect(wordsOf(367, 0)).toContain('about 370 stops');
    expect(wordsOf(368, 0)).toContain('That shows what the figure promises');
  });

  it('one of twelve may be chance, two are not', () => {
    expect(runningRecord([stops(11, 1)])?.kept).toBe(true);
    expect(runningRecord([stops(10, 2)])?.kept).toBe(false);
    expect(wordsOf(10, 2)).toContain('do not rely on it');
  });

  it('of none nothing is said', () => expect(runningRecord([])).toBeUndefined());
});

describe('kept with an outing', () => {
  const record = (): Json =>
    withForetold(stopTest, [...stops(3, 0), { ...stops(1, 0)[0], careful: Infinity }]);

  it('as it was foretold then; the same readings once; taken back, gone', async () => {
    const once = keepAsCheck(await examplePaper('battery-vacuum'), record());
    expect(checksIn(once)).toEqual([[...stops(3, 0), { ...stops(1, 0)[0], careful: Infinity }]]);
    expect(checksIn(keepAsCheck(once, record()))).toHaveLength(1);
    expect(checksIn(takeBack(once, 0).paper)).toEqual([]);
  });

  it('is published without a name, a place or a day, and read as it was', async () => {
    const paper = keepAsCheck(await examplePaper('battery-vacuum'), record());
    const rows = sheetRows(paper);
    const text = sheetText(rows);
    expect(rows).toHaveLength(4);
    expect(rows[0]).toMatchObject({
      month: '2026-05',
      rail: 'dry',
      brake: 'automatic-vacuum',
      invented: true,
    });
    for (const secret of [paper['name'], 'Bracken', 'A member', 'Back straight', 'still, 15', '2026-05-17'])
      expect(text).not.toContain(secret);
    expect(readSheet(text, 'sheet.csv')).toEqual({ rows, problems: [] });
  });

  it('a test that two sheets hold counts once', async () => {
    const rows = sheetRows(keepAsCheck(await examplePaper('battery-vacuum'), record()));
    const others = rows.map((r) => ({ ...r, value: r.value + 1 }));
    expect(sumUp([rows, rows])).toMatchObject({ tests: 1, record: { stops: 4 } });
    expect(sumUp([rows, others])).toMatchObject({ tests: 2, record: { stops: 8 } });
    expect(sheetWords(sumUp([rows]), { system: 'metric', wording: 'us' })[0]).toContain(
      '4 rows are invented',
    );
  });
});

describe('a sheet that is none', () => {
  const good = sheetText([
    { test: 1, kind: 'tilt', month: '2026-05', what: 'centreHeight', value: 0.3, unit: 'm' },
  ]);
  const wrong = [
    ['a survey', 'Chainage (ft),Height (ft)\n0,0\n', 'no data sheet'],
    ['a column gone', good.replace('value,low,', 'value,'), 'no such column'],
    ['a figure in words', good.replace(',0.3,', ',about 0.3,'), '"about 0.3"'],
    ['a day', good.replace('2026-05', '2026-05-17'), '"2026-05-17"'],
    ['a unit of nobody’s', good.replace(/,m,(?=[^,]*,[^,]*,[^,]*,[^,\n]*\n)/, ',NaNm,'), '"NaNm"'],
    ['no value', good.replace(',0.3,', ',,'), 'nothing'],
  ] as const;
  it.each(wrong)('%s', (_, text, found) => {
    const { rows, problems } = readSheet(text, 'sheet.csv');
    expect(rows).toEqual([]);
    expect(problems[0].found).toContain(found);
  });
});
