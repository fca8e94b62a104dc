/** A list that was begun: what of it still stands on another day, or where the list asks otherwise, and what a browser kept of it. */
import { describe, expect, it } from 'vitest';
import {
  asSaid,
  isOfToday,
  progressOf,
  rejectedOf,
  stillSaid,
  type Unfinished,
  unfinishedIn,
} from '../../../desk/inspect/unfinished.ts';
import { tellHindrances } from '../../../desk/leave/tell.ts';
import type { InspectionList } from '../../../papers/inspection/fields.ts';
import { readList } from '../../../papers/inspection/read.ts';

const list = (when: string, items: readonly object[]): InspectionList => {
  const read = readList({
    heedway: 'inspection-list',
    version: 1,
    name: 'Walk round',
    when,
    of: 'engine',
    source: 'invented',
    items,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.troubles));
  return read.value;
};
const items = [
  { id: 'glass', ask: 'Glass clear' },
  { id: 'valve', ask: 'Valves lift' },
  {
    id: 'back',
    ask: 'Back to back',
    measured: {
      kind: 'length',
      right: { from: '171 mm', to: '172 mm' },
      limit: { from: '170 mm', to: '173 mm' },
    },
  },
  { id: 'pins', ask: 'Pins in' },
];
const said = {
  glass: { result: 'right' },
  valve: { result: 'reject', note: 'sticks' },
  back: { value: '172.5 mm' },
} as const;
const begunOn = (when: string, day: string): Unfinished => ({
  id: 'w1',
  list: list(when, items),
  of: 'Fenwick',
  said,
  begun: `${day}T08:12:00+01:00`,
});

describe('taken up again', () => {
  it('on the same day all that was said stands, and what was not said is not', () => {
    const same = begunOn('daily', '2026-05-31');
    expect(stillSaid(same.list, same, '2026-05-31')).toEqual(said);
    expect(progressOf(same.list, said)).toEqual({ said: 3, of: 4, rejected: 1 });
  });
  it.each(['daily', 'before-use'])(
    'of a %s list nothing that was right yesterday is right today; what was amiss stands',
    (when) => {
      const yesterday = begunOn(when, '2026-05-30');
      expect(isOfToday(yesterday, '2026-05-31')).toBe(false);
      expect(stillSaid(yesterday.list, yesterday, '2026-05-31')).toEqual({
        valve: said.valve,
        back: said.back,
      });
    },
  );
  it.each(['periodic', 'after-repair', 'after-derailment'])('a %s list may take days', (when) => {
    const before = begunOn(when, '2026-05-20');
    expect(stillSaid(before.list, before, '2026-05-31')).toEqual(said);
  });
  it('an item that is asked otherwise by now, or no longer, is to be said again', () => {
    const same = begunOn('daily', '2026-05-31');
    const anew = list('daily', [
      { id: 'glass', ask: 'Both glasses clear, and their cocks free' },
      ...items.slice(1, 2),
    ]);
    expect(stillSaid(anew, same, '2026-05-31')).toEqual({ valve: said.valve });
  });
});

describe('what is typed', () => {
  it('has no blanks at its ends once it is recorded, and blanks alone say nothing', () => {
    expect(asSaid({ a: { result: 'reject', note: ' weeps at a stay ' }, b: { value: '  ' } })).toEqual({
      a: { result: 'reject', note: 'weeps at a stay' },
      b: {},
    });
    expect(progressOf(list('daily', items), { valve: { result: 'reject', note: '  ' } }).said).toBe(0);
  });
});

describe('what a browser kept', () => {
  const kept = JSON.parse(JSON.stringify(begunOn('daily', '2026-05-31')));
  it('is read as it was', () => {
    expect(unfinishedIn(kept, kept.list)).toEqual(kept);
  });
  it.each([
    ['no object', null],
    ['no day', { ...kept, begun: 'yesterday' }],
    ['an answer that there is none of', { ...kept, said: { glass: { result: 'perhaps' } } }],
    ['a figure that is no text', { ...kept, said: { back: { value: 3 } } }],
    ['another field', { ...kept, said: { glass: { by: 'me' } } }],
  ])('is none with %s', (_, json) => {
    expect(unfinishedIn(json, kept.list)).toBeUndefined();
  });
});

describe('what is rejected on a list that nobody recorded', () => {
  const here = begunOn('daily', '2026-05-31');
  const things = ['FENWICK', 'Car 1', 'Loop'];
  it('keeps this train, on that day and on the next: waiting mends nothing', () => {
    const kept = [{ list: 'Walk round', of: 'Fenwick' }];
    expect(rejectedOf([here], things, '2026-05-31')).toEqual(kept);
    expect(rejectedOf([here], things, '2026-06-01')).toEqual(kept);
  });
  it('of nothing named yet too; of another train, or where nothing is rejected, not', () => {
    expect(rejectedOf([{ ...here, of: ' ' }], things, '2026-05-31')).toHaveLength(1);
    expect(rejectedOf([here], ['Car 1'], '2026-05-31')).toEqual([]);
    const mended = { ...here, said: { ...said, valve: { result: 'right' } as const } };
    expect(rejectedOf([mended], things, '2026-05-31')).toEqual([]);
  });
  it('is told among what is in the way', () => {
    const [told] = tellHindrances([{ what: 'rejected', list: 'Walk round', of: 'Fenwick' }]);
    expect(told).toContain('not recorded (Walk round, of Fenwick)');
  });
});
