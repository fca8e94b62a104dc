/** An answer belongs to its outing: identity, and the one way in which an answer comes beside an outing. */

import { describe, expect, it } from 'vitest';
import { type Asked, asking, fileOf, type Told, telling } from '../../../desk/asked.ts';
import { cardFile, runningCard } from '../../../desk/card.ts';
import { fileName } from '../../../desk/file-name.ts';
import { identityOf } from '../../../desk/identity.ts';
import { tellTrials } from '../../../desk/tell-trials.ts';
import { openTriedFile, trying } from '../../../desk/trying.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import type { Change } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { readOuting } from '../../../papers/index.ts';
import { examplePaper } from '../../support/papers.ts';

const nothing = async (): Promise<undefined> => undefined;
const speech = { system: 'imperial', wording: 'us' } as const;

async function opened(name: string): Promise<{ paper: Record<string, unknown>; outing: Outing }> {
  const paper = await examplePaper(name);
  const read = await readOuting({ path: name, content: JSON.stringify(paper) }, nothing);
  if (!read.ok) throw new Error('an example that cannot be read');
  return { paper, outing: read.value };
}

const go = await opened('steam-light');
const hold = await opened('too-long-wet');
const answerTo = (asked: Asked) => answerOuting(asked.outing, { remedies: false, counts: false });

describe('identity', () => {
  it('is one for equal outings, whatever the order of their fields', () => {
    expect(identityOf({ a: 1, b: [2, { c: 'x', d: undefined }] })).toBe(
      identityOf({ b: [2, { c: 'x' }], a: 1 }),
    );
    expect(identityOf(structuredClone(go.outing))).toBe(identityOf(go.outing));
  });

  it.each([
    [Infinity, null],
    [Number.NaN, null],
    [1, '1'],
    [0.1, 0.1 + Number.EPSILON],
    [[1, 2], [12]],
    [{ a: '1,"b":2' }, { a: '1', b: 2 }],
    [Float64Array.of(1, 2), Float64Array.of(1, 2.5)],
  ])('tells %s from %s', (one, other) => {
    expect(identityOf(one)).not.toBe(identityOf(other));
  });

  it('changes with any one figure of the outing', () => {
    const slower = { ...go.outing, plannedSpeed: (go.outing.plannedSpeed ?? 2) * (1 + 1e-12) };
    expect(identityOf(slower)).not.toBe(identityOf(go.outing));
  });
});

describe('an answer beside an outing', () => {
  const [one, other] = [asking(go.paper, go.outing), asking(hold.paper, hold.outing)];

  it('is told only of the outing that it was reckoned for', () => {
    const reckoned = { id: one.id, answer: answerTo(one) };
    expect(telling(one, reckoned)?.asked).toBe(one);
    expect(telling(other, reckoned)).toBeNull();
    expect(telling(null, reckoned)).toBeNull();
    expect(telling(one, null)).toBeNull();
  });

  it('cannot be written down by hand', () => {
    // @ts-expect-error nobody makes a Told but by `telling`
    const forged: Told = { asked: other, answer: answerTo(one) };
    // @ts-expect-error nor what is asked but by `asking`
    const made: Asked = { id: one.id, paper: {}, trials: [], outing: hold.outing };
    // @ts-expect-error and a card is drawn from nothing else
    expect(() => runningCard(hold.outing, speech, '0')).toThrow();
    expect([forged, made]).toHaveLength(2);
  });
});

describe('a trial', () => {
  const changes: readonly Change[] = [
    { kind: 'rail-state', state: 'sanded' },
    { kind: 'fewer-cars', leave: [hold.outing.train.vehicles[6].id] },
  ];
  const asked = asking(hold.paper, hold.outing, trying(hold.outing, changes));
  const told = telling(asked, { id: asked.id, answer: answerTo(asked) });

  it('has an identity of its own, and its card is marked with every change in words', () => {
    expect(asked.id).not.toBe(asking(hold.paper, hold.outing).id);
    if (!told) throw new Error('nothing told');
    const card = runningCard(told, speech, '0');
    expect(card.tried).toEqual(tellTrials(asked, speech));
    expect(card.tried).toEqual([
      'sand under the engine’s driving wheels',
      expect.stringMatching(/^leave Light car 6 behind$/),
    ]);
    expect(card.light).toBe('by daylight');
    expect(card.rail).toBe('dry, sanded');
    expect(cardFile(told, 'card.pdf')).toMatch(/^too-long-on-a-wet-rail-\d{4}-\d\d-\d\d-tried-card\.pdf$/);
  });

  it('is carried by the file, which opens to the same question', async () => {
    const file = JSON.parse(JSON.stringify(fileOf(asked))) as Record<string, unknown>;
    const read = await openTriedFile(file, 'tried.json', nothing);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const again = asking(read.value.paper, read.value.outing, read.value.trials);
    expect(again.id).toBe(asked.id);
    expect(again.paper).toEqual(hold.paper);
    expect(tellTrials(again, speech)).toEqual(tellTrials(asked, speech));
    expect(fileOf(asking(hold.paper, hold.outing))).toBe(hold.paper);
  });

  const wrong: readonly (readonly [string, unknown])[] = [
    ['a vehicle that is not there', { kind: 'fewer-cars', leave: ['nobody'] }],
    ['a rider that is not there', { kind: 'fewer-riders', leave: ['nobody'] }],
    ['a gap behind the last car', { kind: 'chain-size', gap: 6, grade: 43, size: 0.006 }],
    ['all vehicles', { kind: 'fewer-cars', leave: hold.outing.train.vehicles.map((v) => v.id) }],
    ['a kind that nobody knows', { kind: 'hope' }],
    ['a field too many', { kind: 'guard', and: 1 }],
    ['a speed below standing', { kind: 'slower-everywhere', speed: -1 }],
    ['one inside a set', { kind: 'together', changes: [{ kind: 'brake-car', vehicle: 'x', like: 'y' }] }],
    ['no change at all', undefined],
  ];
  it.each(wrong)('that cannot be made is refused: %s', async (_, change) => {
    const file = { heedway: 'tried', version: 1, outing: hold.paper, changes: change ? [change] : [] };
    const read = await openTriedFile(file, 'tried.json', nothing);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problems[0].path).toMatch(/^changes/);
  });

  it('on an outing that cannot be read is refused with the field', async () => {
    const outing = { ...hold.paper, plannedSpeed: '7 psi' };
    const read = await openTriedFile(
      { heedway: 'tried', version: 2, outing, changes },
      'tried.json',
      nothing,
    );
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problems.map((p) => p.path)).toEqual(['version', 'outing.plannedSpeed']);
  });
});

describe('names of files', () => {
  it.each([
    ['Gala', '2026-05-02', 'card.pdf', 'gala-2026-05-02-card.pdf'],
    ['春の運転 / 1', undefined, 'card.pdf', '春の運転-1-card.pdf'],
    ['../..', undefined, '.json', 'outing.json'],
    ['N'.repeat(200), undefined, 'card.pdf', `${'n'.repeat(40)}-card.pdf`],
  ])('%s, %s', (name, date, what, expected) => {
    expect(fileName(name, date, what)).toBe(expected);
  });
});
