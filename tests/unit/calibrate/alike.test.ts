/** One car measured, the others built alike: wider, never called measured, and taken back with it. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { single } from '../../../desk/make-up.ts';
import { keptTests } from '../../../desk/measured/ages.ts';
import { builtAlike, withAlike } from '../../../desk/measured/alike.ts';
import { applyToOuting, type Json, takeBack } from '../../../desk/measured/apply.ts';
import { sheetRows } from '../../../desk/measured/data-sheet.ts';
import type { Result } from '../../../engine/calibrate/result.ts';
import { keptWords } from '../../../words/measured/ages.ts';
import { examplePaper } from '../../support/papers.ts';

const record: Json = JSON.parse(
  readFileSync(new URL('../../../examples/tests/brake-pull.json', import.meta.url), 'utf8'),
);

const result = (key: string, field: string): Result => ({
  key,
  kind: 'force',
  quantity: { value: 100, low: 90, high: 110, how: 'measured', source: 'Pull', date: '2026-05-17' },
  interval: [92, 108],
  systematic: 0,
  surer: { by: 'readings' },
  belongs: [{ paper: 'vehicle', field }],
});
const found = [result('rolling', 'resistance.rolling'), result('centreHeight', 'centreHeight')];

const figure = (paper: Json, id: string, group: string, key: string): Json | undefined =>
  (single(paper).find((v) => v.id === id)?.vehicle[group] as Json | undefined)?.[key] as Json | undefined;

it('is offered to the cars of one build, not to the engine', async () => {
  const paper = await examplePaper('battery-vacuum');
  expect(builtAlike(paper, 'car-2').map(({ id }) => id)).toEqual(['car-1', 'car-3']);
  expect(builtAlike(paper, 'engine')).toEqual([]);
  expect(builtAlike(paper, undefined)).toEqual([]);
  // One of which something was measured is still built as the others are.
  const once = applyToOuting(paper, record, found, 'car-2').paper;
  expect(builtAlike(once, 'car-1').map(({ id }) => id)).toEqual(['car-2', 'car-3']);
});

it('is wider than measured, says so, and goes with the test', async () => {
  const paper = await examplePaper('battery-vacuum');
  const applied = applyToOuting(paper, record, withAlike(found, ['car-1', 'car-3']), 'car-2', [
    'car-1',
    'car-3',
  ]);
  const rolling = (id: string) => figure(applied.paper, id, 'resistance', 'rolling');
  expect(rolling('car-2')).toMatchObject({ how: 'measured', low: 90, high: 110 });
  expect(rolling('car-1')).toMatchObject({ how: 'stated', value: 100, source: 'of one built alike: Pull' });
  expect(rolling('car-1')?.['low']).toBeCloseTo(67.5, 9);
  expect(rolling('car-3')?.['high']).toBeCloseTo(143, 9);
  // Where its weight lies is measured of each.
  expect(applied.written).not.toContain('car-1: centreHeight');
  // Nobody measured the others: they are not published.
  expect(sheetRows(applied.paper).filter((r) => r.what === 'resistance.rolling')).toHaveLength(1);
  const back = takeBack(applied.paper, 0).paper;
  for (const id of ['car-1', 'car-2', 'car-3'])
    expect(figure(back, id, 'resistance', 'rolling')).toEqual(figure(paper, id, 'resistance', 'rolling'));
});

it('tells how old each test is, and when it counts no more', async () => {
  const bare = await examplePaper('battery-vacuum');
  const { paper } = applyToOuting(bare, record, found, 'car-2');
  const said = (changed: Json, today = '2026-05-31'): string => keptWords(keptTests(changed, today)[0]);
  expect(said(paper)).toBe('14 days old');
  const { date: _day, ...undated } = paper;
  expect(said(undated, '2027-06-17')).toBe('13 months old');
  const rule = { value: 10, source: 'rules' };
  const ruled = { ...paper, host: { ...(paper['host'] as Json), measuredLasts: rule } };
  expect(said(ruled)).toBe('14 days old; EXPIRED by the host’s rule: taken as if assumed');
  expect(
    said({ ...ruled, host: { ...(paper['host'] as Json), measuredLasts: { ...rule, value: 14 } } }),
  ).toBe('14 days old');
  const again = applyToOuting(paper, { ...record, date: '2026-05-20' }, found, 'car-2').paper;
  expect(keptTests(again, '').map((t) => t.state)).toEqual(['replaced', 'counts']);
  const train = paper['train'] as { readonly vehicles: readonly Json[] };
  const worked = (part: string, date: string): Json => ({
    ...paper,
    train: {
      ...train,
      vehicles: train.vehicles.map((m) => ({
        ...m,
        vehicle: { ...(m['vehicle'] as Json), worked: [{ part, date }] },
      })),
    },
  });
  expect(keptTests(worked('wheels', '2026-05-18'), '')[0].state).toBe('partly-worked');
  expect(keptTests(worked('brakes', '2026-05-18'), '')[0].state).toBe('counts');
  expect(keptTests(worked('wheels', '2026-05-17'), '')[0].state).toBe('counts');
});
