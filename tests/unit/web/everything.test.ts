/** A file of everything that is none says so in words. */
import { expect, it } from 'vitest';
import { readEverything, writeEverything } from '../../../web/parts/everything.ts';
import { examplePaper } from '../../support/papers.ts';

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

const draft = { heedway: 'test', version: 1, name: 'Tilt', date: '2026-05-31', test: { kind: 'tilt' } };

it('tests that are being written go with it, however far they are', async () => {
  const outing = await examplePaper('battery-vacuum');
  const watch = { presses: [], stopped: true };
  const text = writeEverything({
    outing,
    vehicles: [],
    drafts: { tilt: { record: draft, vehicle: 'car-2', without: ['car-1'], watch } },
  });
  const read = await readEverything(text, 'all.json');
  expect(read.ok && read.value.drafts).toEqual({
    tilt: { record: draft, vehicle: 'car-2', without: ['car-1'] },
  });
  // With none the file is the outing alone, as ever.
  expect(JSON.parse(writeEverything({ outing, vehicles: [], drafts: {} }))).toEqual(outing);
});

it.each([
  [[], 'an empty list'],
  [{ tilt: { record: { ...draft, test: { kind: 'weighing' } } } }, 'drafts'],
  [{ tilt: null }, 'drafts'],
  ['none', 'drafts'],
])('drafts that are none: %j', async (drafts, words) => {
  const outing = await examplePaper('battery-vacuum');
  const text = JSON.stringify({ heedway: 'everything', version: 1, outing, vehicles: [], drafts });
  const read = await readEverything(text, 'all.json');
  expect(read.ok ? '' : read.problems.map((p) => `${p.path} ${p.message}`).join()).toContain(words);
});
