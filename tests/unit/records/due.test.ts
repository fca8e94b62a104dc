/** Certificates: which of several counts, what is out, and the calendar file by another library's reader. */
import ICAL from 'ical.js';
import { describe, expect, it, vi } from 'vitest';
import { dueCalendar } from '../../../desk/due/calendar.ts';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import { calendar } from '../../../records/calendar.ts';
import { type DueItem, dueOn } from '../../../records/due.ts';
import { look } from '../../../records/ledger.ts';
import { personNamed } from '../../../records/names.ts';
import type { Json } from '../../../records/record.ts';
import { tellDue } from '../../../words/records/due.ts';
import { ada, shed } from '../../support/certificates.ts';
import { clockFrom, said } from '../../support/club-records.ts';
import { drawer } from '../../support/random-outings.ts';

const only = async (day: string, ...certificates: readonly Json[]): Promise<DueItem> => {
  const items = dueOn((await shed(...certificates)).entries, day);
  expect(items).toHaveLength(1);
  return items[0];
};

/** The same draws every time. */
const pickFrom = (seed: number) => {
  const random = drawer(seed);
  return <T>(of: readonly T[]): T => of[Math.floor(random(0, of.length))];
};

const hydraulic = (on: string, more: Json = {}): Json => ({
  what: 'boiler-hydraulic-test',
  of: 'Fenwick',
  on,
  interval: '3 years',
  ...more,
});

it('of many of a thing the best counts, whatever others there are', async () => {
  const days = ['2024-02-29', '2025-05-30', '2025-06-01', '2025-11-30', '2026-05-01', '2026-07-01'];
  const ends = [
    { interval: 'annually, not to exceed 14 months' },
    { interval: '6 months, end of month, 30 days of grace' },
    { interval: '2 years', until: '2026-05-30' },
    { until: '2026-06-10' },
    {},
  ];
  const draw = pickFrom(7);
  for (let i = 0; i < 20; i++) {
    const all = Array.from({ length: 9 }, () => ({
      ...hydraulic(draw(days)),
      interval: undefined,
      ...draw(ends),
    }));
    const written = all.map((one) => JSON.parse(JSON.stringify(one)) as Json);
    const together = await only('2026-05-31', ...written);
    const each = await Promise.all(written.map((one) => only('2026-05-31', one)));
    const worth = ['not-yet', 'out', 'unknown', 'before-use', 'grace', 'due', 'stands'];
    const best = Math.max(...each.map(({ state }) => worth.indexOf(state)));
    const last = each.filter(({ state }) => state === worth[best]).map((one) => one.last ?? '9999');
    expect([together.state, together.last ?? '9999']).toEqual([worth[best], last.sort().at(-1)]);
  }
});

describe('of many of a thing', () => {
  /** How many texts are read as JSON meanwhile. */
  const readBy = (work: () => void): number => {
    const parse = vi.spyOn(JSON, 'parse');
    try {
      work();
      return parse.mock.calls.length;
    } finally {
      parse.mockRestore();
    }
  };

  it('those that say the same but for their day are told apart without being read', async () => {
    const days = Array.from({ length: 60 }, (_, i) => `2025-${`${1 + (i % 12)}`.padStart(2, '0')}-11`);
    const { entries } = await shed(
      ...days.map((on, i) => hydraulic(on, { of: i % 2 === 0 ? 'Fenwick' : 'Lark' })),
    );
    let items: DueItem[] = [];
    const read = readBy(() => {
      items = dueOn(entries, '2026-05-31');
    });
    expect(items.map(({ certificate: { of, on } }) => `${of} ${on}`)).toEqual([
      'Fenwick 2025-11-11',
      'Lark 2025-12-11',
    ]);
    expect(read).toBeLessThan(8);
  });

  it('a text that looks like its day is none, and what was said anew is read as it stands', async () => {
    const trap = ',"on":"2026-05-01"';
    const { store } = await shed(
      hydraulic('2020-01-01', { details: trap }),
      hydraulic('2021-01-01', { details: trap }),
    );
    const [first] = (await look(store)).entries;
    const clock = clockFrom('2026-05-02T10:00:00+01:00');
    await said(store, ada, clock, 'certificate', { by: 'B', ...hydraulic('2024-06-01') }, first.row.hash);
    const { entries } = await look(store);
    expect(dueOn(entries, '2026-05-31')).toMatchObject([{ state: 'stands', since: '2024-06-01' }]);
  });

  it('of two of the same day that which was recorded first counts, whoever gave others', async () => {
    const by = (on: string, by: string): Json => hydraulic(on, { by });
    const { certificate } = await only(
      '2026-05-31',
      by('2024-01-01', 'X'),
      by('2025-01-01', 'Y'),
      by('2025-01-01', 'X'),
    );
    expect(certificate.by).toBe('Y');
  });
});

describe('of several certificates', () => {
  it('one that is out takes nothing from another that stands, in whatever order they came', async () => {
    const [old, fresh] = [hydraulic('2020-01-01'), hydraulic('2025-01-01')];
    for (const pair of [
      [old, fresh],
      [fresh, old],
    ])
      expect(await only('2026-05-31', ...pair)).toMatchObject({ state: 'stands', last: '2028-01-01' });
  });

  it('one that begins later is none yet', async () => {
    expect((await only('2026-05-31', hydraulic('2026-06-01'))).state).toBe('not-yet');
    expect(await only('2026-05-31', hydraulic('2020-01-01'), hydraulic('2026-06-01'))).toMatchObject({
      state: 'out',
    });
    const near = { interval: '1 year, not to exceed 14 months' };
    expect(await only('2026-05-31', hydraulic('2025-05-01', near), hydraulic('2026-06-01'))).toMatchObject({
      state: 'due',
    });
  });

  it('both what it says of its end and its interval must stand', async () => {
    const both = hydraulic('2025-01-01', { until: '2026-05-30' });
    expect(await only('2026-05-30', both)).toMatchObject({ state: 'stands', last: '2026-05-30' });
    expect(await only('2026-05-31', both)).toMatchObject({ state: 'out', last: '2026-05-30' });
    expect(await only('2028-01-02', hydraulic('2025-01-01', { until: '2030-01-01' }))).toMatchObject({
      state: 'out',
    });
  });

  it('one of no end nobody can tell', async () => {
    const { interval: _, ...bare } = hydraulic('2025-01-01');
    expect((await only('2026-05-31', bare)).state).toBe('unknown');
  });

  it('those of another thing or person are others', async () => {
    const other = { ...hydraulic('2025-01-01'), of: 'Granite' };
    expect(
      dueOn((await shed(hydraulic('2020-01-01'), other)).entries, '2026-05-31').map((i) => i.state),
    ).toEqual(['out', 'stands']);
  });
});

const outing = { train: { vehicles: [{ vehicle: { name: 'Fenwick' } }] }, riders: [{ name: 'Quenby' }] };

describe('shown to the host of an outing', () => {
  const show = async (day: string, ...certificates: readonly Json[]): Promise<unknown> =>
    withShown(outing, recorded((await shed(...certificates)).entries, [], day))['shown'];

  it('with the last day on which it stands, by its rule', async () => {
    const graced = hydraulic('2025-01-31', {
      interval: 'annually, not to exceed 14 months, 5 days of grace',
    });
    expect(await show('2026-05-31', graced)).toMatchObject([
      {
        what: 'boiler-hydraulic-test',
        of: 'Fenwick',
        on: '2025-01-31',
        until: '2026-03-31',
        graceTo: '2026-04-05',
      },
    ]);
  });
  it('without an end, where nobody can tell how long it stands', async () => {
    const both = hydraulic('2025-01-01', { interval: '3 years, 31 service days' });
    const [only] = (await show('2026-05-31', both)) as readonly Json[];
    expect(Object.keys(only)).toEqual(['what', 'of', 'on', 'record']);
  });
  it('from the one that counts, where one came too soon after it', async () => {
    const track = { what: 'track-inspection', interval: 'weekly, at least 3 days between' };
    const two = await show('2026-05-08', { ...track, on: '2026-05-01' }, { ...track, on: '2026-05-03' });
    expect(two).toMatchObject([{ what: 'track-inspection', on: '2026-05-01', until: '2026-05-08' }]);
  });
  it('as it was said last: the record says anew what stood in the paper', async () => {
    const { store } = await shed(hydraulic('2025-01-01', { until: '2030-01-01', interval: '10 years' }));
    const { entries } = await look(store);
    const paper = withShown(outing, recorded(entries, [], '2026-05-31'));
    const shorter = { ...entries[0].body.content, until: '2026-05-30' };
    await said(store, ada, clockFrom('2026-05-30T08:00:00Z'), 'certificate', shorter, entries[0].row.hash);
    const anew = withShown(paper, recorded((await look(store)).entries, [], '2026-05-31'));
    expect(anew['shown']).toMatchObject([{ until: '2026-05-30' }]);
  });
  it('nothing of another vehicle or person', async () => {
    const { store } = await shed(
      { ...hydraulic('2025-01-01'), of: 'Granite' },
      { what: 'insurance', on: '2026-01-01' },
    );
    for (const name of ['Quenby', 'Somebody Else']) {
      const { person } = await personNamed(store, name);
      await said(store, ada, clockFrom('2026-01-02T08:00:00Z'), 'certificate', {
        what: 'first-aid',
        person,
        on: '2026-01-01',
        until: '2029-01-01',
        by: 'A school',
      });
    }
    const paper = withShown(outing, recorded((await look(store)).entries, await store.names(), '2026-05-31'));
    const shown = paper['shown'] as readonly { readonly what: string; readonly of?: string }[];
    expect(shown.map(({ what, of }) => [what, of]).sort()).toEqual([
      ['first-aid', 'Quenby'],
      ['insurance', undefined],
    ]);
  });
  it('beside what was written by hand, once', async () => {
    const { entries } = await shed(hydraulic('2025-01-01'));
    const hand = { what: 'insurance', on: '2026-01-01', until: '2026-12-31' };
    const once = withShown({ ...outing, shown: [hand] }, recorded(entries, [], '2026-05-31'));
    expect(once['shown']).toEqual([hand, expect.objectContaining({ until: '2028-01-01' })]);
    expect(withShown(once, recorded(entries, [], '2026-05-31'))).toBe(once);
  });
});

it('what is no interval, and what is of no kind, is refused', async () => {
  await expect(shed(hydraulic('2025-01-01', { interval: 'now and then' }))).rejects.toThrow(/annually/);
  await expect(shed({ what: 'blessing', on: '2025-01-01' })).rejects.toThrow(/boiler-hydraulic-test/);
});

describe('the calendar file, by another library', () => {
  const read = (text: string) => {
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    return events.map((event) => {
      const one = new ICAL.Event(event);
      return {
        day: one.startDate.toString(),
        isDate: one.startDate.isDate,
        summary: one.summary,
        description: one.description,
        alarms: event.getAllSubcomponents('valarm').map((a) => `${a.getFirstPropertyValue('trigger')}`),
      };
    });
  };

  it('says the last days, with alarms, and each thing once', async () => {
    const { store } = await shed(hydraulic('2025-01-01', { details: 'at 1.5 times; held, 30 min\nno leak' }));
    const { person } = await personNamed(store, 'An Invented Person');
    await said(store, ada, clockFrom(), 'certificate', {
      what: 'first-aid',
      person,
      on: '2026-01-01',
      until: '2029-01-01',
      by: 'A school; north, east',
    });
    const { entries } = await look(store);
    const names = await store.names();
    const items = dueOn(entries, '2026-05-31');
    const text = dueCalendar('Club', items, names);
    expect(read(text)).toEqual([
      {
        day: '2028-01-01',
        isDate: true,
        summary: 'Fenwick: boiler hydraulic test, last day',
        description:
          'Since 2025-01-01, by An invented inspector.\n3 years\nat 1.5 times; held, 30 min\nno leak',
        alarms: ['-P30D', '-P7D'],
      },
      {
        day: '2029-01-01',
        isDate: true,
        summary: 'An Invented Person: first aid, last day',
        description: 'Since 2026-01-01, by A school; north, east.',
        alarms: ['-P30D', '-P7D'],
      },
    ]);
    expect(dueCalendar('Club', [...items].reverse(), names)).toBe(text);
    expect(tellDue(items[0], names)).toMatchObject({
      of: 'Fenwick',
      state: 'stands',
      until: 'to 2028-01-01',
    });
  });

  it('is of lines of 75 octets at the most, and no letter is cut', () => {
    const summary = `${'ä🚂,;\\'.repeat(40)}\nend`;
    const day = {
      id: 'a',
      day: '2026-05-31',
      summary,
      description: '',
      stamp: '2026-05-01T10:00:00+02:00',
      alarms: [],
    };
    const text = calendar('Ä', [day]);
    const lines = text.split('\r\n');
    expect(Math.max(...lines.map((line) => new TextEncoder().encode(line).length))).toBeLessThanOrEqual(75);
    expect(text).toContain('DTSTAMP:20260501T080000Z');
    expect(read(text)[0].summary).toBe(summary);
  });
});

it('in grace says to which day, and to which day it stood', async () => {
  const graced = hydraulic('2025-05-20', { interval: '1 year, 30 days of grace' });
  expect(tellDue(await only('2026-05-31', graced), [])).toMatchObject({
    state: 'in grace',
    until: 'to 2026-05-20, in grace to 2026-06-19',
  });
});
