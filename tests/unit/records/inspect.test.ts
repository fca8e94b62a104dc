/** Inspections: every item is said, figures judge by their bands, and what is amiss stays open until it is mended. */
import { describe, expect, it } from 'vitest';
import { exampleLists } from '../../../data/inspection-lists/index.ts';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import { inspectionContent, type Looked, lackingIn, resultOf } from '../../../desk/inspect/inspection.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import { drawings } from '../../../papers/inspection/drawings.ts';
import { type InspectionItem, type InspectionList, whens } from '../../../papers/inspection/fields.ts';
import { readList } from '../../../papers/inspection/read.ts';
import { inspectedOn, openDefects } from '../../../records/inspections.ts';
import { look } from '../../../records/ledger.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { inspectionDrawing } from '../../../views/inspection-drawings.ts';
import { sceneToSvg } from '../../../views/strip/scene.ts';
import { tellBands } from '../../../words/records/bands.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { plain } from '../../support/rules.ts';

const list = (items: readonly object[]): InspectionList => {
  const read = readList({
    heedway: 'inspection-list',
    version: 1,
    name: 'Daily',
    when: 'daily',
    of: 'engine',
    source: 'invented',
    items,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.troubles));
  return read.value;
};
const glass = { id: 'glass', ask: 'Glass clear' };
const back = {
  id: 'back',
  ask: 'Back to back',
  measured: {
    kind: 'length',
    right: { from: '171 mm', to: '172 mm' },
    limit: { from: '170.5 mm', to: '172.5 mm' },
  },
};

describe('drawings of how to measure', () => {
  it.each(drawings)('%s is drawn, and says what it shows', (name) => {
    const svg = sceneToSvg(inspectionDrawing(name, 'Drawing: of it'));
    expect(svg).toContain('Drawing: of it');
    expect(svg.match(/<(?:line|path|rect|circle)/g)?.length).toBeGreaterThan(2);
  });
  it('are named by an item, and no other name is taken', () => {
    expect(list([{ ...back, drawing: 'back-to-back' }]).items[0].drawing).toBe('back-to-back');
    expect(() => list([{ ...back, drawing: 'a-dragon' }])).toThrow('track-gauge');
  });
});

describe('the lists that come along', () => {
  it.each(Object.entries(exampleLists))(
    '%s can be read, is marked as an example and names its source',
    (_, json) => {
      const read = readList(json);
      if (!read.ok) throw new Error(JSON.stringify(read.troubles));
      expect(read.value.example).toBe(true);
      expect(read.value.source).toMatch(/example/);
    },
  );
  it('judge by figures that are invented and say so, each by what is right, to be mended and rejected', () => {
    const measured = Object.values(exampleLists).flatMap((json) => {
      const read = readList(json);
      return read.ok
        ? read.value.items.flatMap((item) => (item.measured ? [{ item, of: read.value }] : []))
        : [];
    });
    expect(measured.length).toBeGreaterThan(6);
    for (const { item, of } of measured) {
      expect(of.source).toContain('invented');
      expect(item.how).toContain('Figures invented');
      expect(item.measured?.limit).toBeDefined();
      expect(tellBands(item.measured as NonNullable<InspectionItem['measured']>)).toMatch(
        /^right: .+; to be mended: .+; REJECTED: all else$/,
      );
    }
    const valve = measured.find(({ item }) => item.id === 'valve')?.item as InspectionItem;
    const judgedAt = (value: string) => resultOf(valve, { value });
    expect(['96.9 %', '97 %', '100 %', '100.1 %', '103 %', '103.1 %', '93 %'].map(judgedAt)).toEqual([
      'limit',
      'right',
      'right',
      'limit',
      'limit',
      'reject',
      'reject',
    ]);
  });
  it.each([
    [{ right: { from: '12 mm' } }, 'right: 12 mm or more; REJECTED: all else'],
    [
      { right: { to: '1 mm' }, limit: { to: '2 mm' } },
      'right: 1 mm or less; to be mended: 2 mm or less; REJECTED: all else',
    ],
    [
      { right: { from: '1 mm', to: '2 mm' }, limit: {} },
      'right: 1 mm to 2 mm; to be mended: any figure; REJECTED: all else',
    ],
  ])('tell their bands as they are written', (bands, told) => {
    expect(tellBands({ kind: 'length', ...bands })).toBe(told);
  });
  it('are of every occasion', () => {
    const lists = Object.values(exampleLists).flatMap((json) => {
      const read = readList(json);
      return read.ok ? [read.value] : [];
    });
    expect([...new Set(lists.map(({ when }) => when))].sort()).toEqual([...whens].sort());
    expect(lists.filter(({ when }) => when === 'after-derailment')[0]?.items.map(({ id }) => id)).toContain(
      'wheels',
    );
  });
  it('leave whoever looks at most two taps an item that is right, and three minutes for all', () => {
    for (const json of Object.values(exampleLists)) {
      const read = readList(json);
      // Of two taps and seven seconds each (common practice, no source) twenty-five are three minutes.
      if (read.ok) expect(read.value.items.length).toBeLessThanOrEqual(25);
    }
  });
});

describe('a list', () => {
  it.each([
    ['an id twice', [glass, glass]],
    [
      'a limit within what is right',
      [{ ...back, measured: { ...back.measured, limit: { from: '171.5 mm' } } }],
    ],
    ['a figure of another kind', [{ ...back, measured: { kind: 'length', right: { from: '3 psi' } } }]],
    [
      'a band that ends before it begins',
      [{ ...back, measured: { kind: 'length', right: { from: '2 mm', to: '1 mm' } } }],
    ],
  ])('with %s is refused', (_, items) => expect(() => list(items)).toThrow());
});

describe('an item', () => {
  const measured = list([back]).items[0];
  const of = (item: InspectionItem, looked: Looked) => resultOf(item, looked);

  it('is judged by its figure, ends of the bands included', () => {
    const at = (value: string) => of(measured, { value });
    expect(['171 mm', '172 mm', '170.5 mm', '172.5 mm', '170.4 mm', '172.6 mm'].map(at)).toEqual([
      'right',
      'right',
      'limit',
      'limit',
      'reject',
      'reject',
    ]);
  });
  it('is no better than what is said of it, nor than its figure', () => {
    expect(of(measured, { value: '171.5 mm', result: 'limit' })).toBe('limit');
    expect(of(measured, { value: '170.4 mm', result: 'right' })).toBe('reject');
  });
  it('that is measured is not right without its figure; it may be rejected without', () => {
    expect(of(measured, { result: 'right' })).toBeUndefined();
    expect(of(measured, { result: 'right', value: 'about right' })).toBeUndefined();
    expect(of(measured, { result: 'reject' })).toBe('reject');
  });
  it('that is not said, or is amiss and nobody said how, is lacking', async () => {
    const both = list([glass, back]);
    const why = (all: Record<string, Looked>) => lackingIn(both, all).map((l) => [l.item.id, l.why]);
    expect(why({})).toEqual([
      ['glass', 'not-said'],
      ['back', 'not-said'],
    ]);
    expect(why({ glass: { result: 'reject' }, back: { value: 'x' } })).toEqual([
      ['glass', 'no-note'],
      ['back', 'no-figure'],
    ]);
    expect(why({ glass: { result: 'right' }, back: { value: '171.5 mm' } })).toEqual([]);
    await expect(inspectionContent(both, 'Fenwick', {})).rejects.toThrow(RangeError);
  });
});

const [store, ada] = [memoryStore(), await author()];
const engine = plain(2).train.vehicles[0].name;
const inspected = async (day: string, looked: Looked) =>
  said(
    store,
    ada,
    clockFrom(`${day}T08:00:00Z`),
    'inspection',
    await inspectionContent(list([glass]), engine, { glass: looked }),
  );
const bad = await inspected('2026-05-30', { result: 'reject', note: 'blows by' });
await inspected('2026-05-31', { result: 'right' });

describe('a defect', () => {
  it('stays open, though another day it is found right, until a record says that it is mended', async () => {
    const before = (await look(store)).entries;
    expect(openDefects(before)).toMatchObject([
      { of: engine, item: 'glass', what: 'blows by', rejects: true, since: '2026-05-30' },
    ]);
    const paper = withShown(
      { train: { vehicles: [{ vehicle: { name: engine } }] } },
      recorded(before, [], '2026-05-31'),
    );
    expect(paper['defects']).toMatchObject([{ of: engine, what: 'blows by', rejects: true }]);
    expect(paper['shown']).toMatchObject([
      { what: 'inspection', of: engine, on: '2026-05-31', until: '2026-05-31' },
    ]);
    await said(store, ada, clockFrom('2026-05-31T10:00:00Z'), 'mended', {
      inspection: bad.row.hash,
      item: 'glass',
      what: 'new packing',
    });
    const after = (await look(store)).entries;
    expect(openDefects(after)).toEqual([]);
    const hand = { of: engine, what: 'bent rod', rejects: false, since: '2026-05-01' };
    const both = { ...paper, defects: [...(paper['defects'] as object[]), hand] };
    expect(withShown(both, recorded(after, [], '2026-05-31'))['defects']).toEqual([hand]);
    expect(withShown(paper, recorded(after, [], '2026-05-31'))).not.toHaveProperty('defects');
  });

  it('of two found in one inspection the other stays open, and so does the same of another inspection', async () => {
    const here = memoryStore();
    const clock = clockFrom('2026-05-30T08:00:00Z');
    const two = ['glass', 'feed'].map((item) => ({ item, ask: item, result: 'reject', note: 'amiss' }));
    const content = { list: 'L', listHash: 'a'.repeat(64), when: 'daily', of: engine, looked: two };
    const first = await said(here, ada, clock, 'inspection', content);
    await said(here, ada, clock, 'inspection', content);
    await said(here, ada, clock, 'mended', {
      inspection: first.row.hash,
      item: 'glass',
      what: 'new packing',
    });
    const open = openDefects((await look(here)).entries);
    expect(open.map(({ item, inspection }) => [item, inspection.first === open[0].inspection.first])).toEqual(
      [
        ['feed', true],
        ['glass', false],
        ['feed', false],
      ],
    );
  });

  it('is a matter of its own day: an inspection counts on no other', async () => {
    const { entries } = await look(store);
    expect(inspectedOn(entries, '2026-05-31').map(({ of }) => of)).toEqual([engine]);
    expect(inspectedOn(entries, '2026-06-01')).toEqual([]);
  });

  it('forbids where it is rejected, limits where it is to be mended, and is no matter of another train', () => {
    const found = (of: string, rejects: boolean) =>
      askOrder(plain(2, { defects: [{ of, what: 'x', rejects, since: '2026-05-30' }] })).map((f) => [
        f.code,
        f.severity,
      ]);
    expect(found(engine, true)).toEqual([['defect-open', 'forbids']]);
    expect(found(engine, false)).toEqual([['defect-open', 'limits']]);
    expect(found(plain(2).line.name, true)).toEqual([['defect-open', 'forbids']]);
    expect(found('Another engine', true)).toEqual([]);
  });
});
