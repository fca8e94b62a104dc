/** What goes by service days: from when runs are kept, of what came from elsewhere, and before use. */
import { describe, expect, it } from 'vitest';
import { type DueItem, dueOn } from '../../../records/due.ts';
import { look, take } from '../../../records/ledger.ts';
import type { Entry } from '../../../records/record.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { tellDue } from '../../../words/records/due.ts';
import { ada, ran, ranOn, shed, steam, worst } from '../../support/certificates.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';

/** A run of before all that is asked for: since then runs are kept. */
const KEPT = '2026-04-01';

describe('service days', () => {
  it('are counted from departures', async () => {
    expect(await ranOn(steam, KEPT, '2026-05-02')).toMatchObject({ state: 'stands', serviceLeft: 1 });
    expect(await ranOn(steam, KEPT, '2026-05-02', '2026-05-03')).toMatchObject({
      state: 'out',
      serviceLeft: 0,
    });
    expect((await ranOn(steam)).state).toBe('unknown');
  });
  it('are none on the day itself: what was tested this morning may run, though it never ran here', async () => {
    const today = { ...steam, on: '2026-05-31' };
    expect(await ranOn(today)).toMatchObject({ state: 'stands', serviceLeft: 2 });
  });
  it('of a thing that never ran here are as many at the most as days went by: a new engine’s test is not lost before its first run', async () => {
    const yesterday = await ranOn({ ...steam, on: '2026-05-30' });
    expect(yesterday).toMatchObject({ state: 'stands', serviceLeft: 1, atLeast: true });
    expect(tellDue(yesterday, []).until).toBe('at least 1 service day left');
    // It may have run on both of them.
    expect((await ranOn({ ...steam, on: '2026-05-29' })).state).toBe('unknown');
    const month = { ...steam, on: '2026-05-01', interval: '31 service days' };
    expect(await ranOn(month)).toMatchObject({ state: 'stands', serviceLeft: 1, atLeast: true });
    expect((await ranOn({ ...month, on: '2026-04-30' })).state).toBe('unknown');
    // Its calendar ends all the same.
    expect((await ranOn({ ...month, interval: '7 days, 31 service days' })).state).toBe('out');
  });
  it('of before the first run that its keeper put by are not none: it may have run on each', async () => {
    const month = { ...steam, on: '2026-05-01', interval: '31 service days' };
    // Nineteen to the nineteenth, and the twentieth.
    expect(await ranOn(month, '2026-05-20')).toMatchObject({
      state: 'stands',
      serviceLeft: 11,
      atLeast: true,
    });
    const kept = await ranOn(month, KEPT, '2026-05-20');
    expect(kept).toMatchObject({ state: 'stands', serviceLeft: 30 });
    expect(kept).not.toHaveProperty('atLeast');
    expect((await ranOn({ ...month, on: '2026-03-01' }, '2026-05-20')).state).toBe('unknown');
  });
  it('are known from the day since which whoever writes the certificate says that all runs are here, whoever puts them by', async () => {
    const month = { ...steam, on: '2026-05-01', interval: '31 service days' };
    const since = async (runsKeptSince: string, ...days: readonly string[]): Promise<DueItem> => {
      const { store } = await shed({ ...month, runsKeptSince });
      const ben = await author('gate');
      for (const day of days) await ran(store, ben, day);
      return worst(store);
    };
    const kept = await since('2026-05-01', '2026-05-09', '2026-05-10');
    expect(kept).toMatchObject({ state: 'stands', serviceLeft: 29 });
    expect(kept).not.toHaveProperty('atLeast');
    expect(await since('2026-05-01')).toMatchObject({ state: 'stands', serviceLeft: 31 });
    // What ran before that day nobody says.
    expect(await since('2026-05-08', '2026-05-09')).toMatchObject({ serviceLeft: 23, atLeast: true });
    // A day that has not come says nothing.
    expect(await since('2026-06-20')).toMatchObject({ serviceLeft: 1, atLeast: true });
  });
  it('a run that is put by never leaves more of them than there were on that day', async () => {
    const month = { ...steam, on: '2026-05-01', interval: '31 service days' };
    const { store } = await shed(month);
    const leftOn = async (day: string): Promise<number> =>
      dueOn((await look(store)).entries, day)[0].serviceLeft ?? 0;
    for (const day of ['2026-05-09', '2026-05-10', '2026-05-20', '2026-05-31']) {
      const before = await leftOn(day);
      await ran(store, ada, day);
      expect(await leftOn(day)).toBeLessThanOrEqual(before);
    }
  });
  it('one old run that is written down today does not say that all since then are', async () => {
    const month = { ...steam, on: '2026-05-01', interval: '31 service days' };
    const { store } = await shed(month);
    await ran(store, ada, '2026-05-20');
    await ran(store, ada, '2026-05-20', 'Fenwick', '2026-05-01T11:00:00+00:00');
    expect(await worst(store)).toMatchObject({ state: 'stands', serviceLeft: 11, atLeast: true });
  });
  it('of before anything was recorded are none that nobody ran: it cannot be told, but where those known are too many', async () => {
    const before = { ...steam, on: '2026-04-30' };
    const unsure = await ranOn(before, '2026-05-02');
    expect(unsure.state).toBe('unknown');
    expect(unsure).not.toHaveProperty('serviceLeft');
    expect(tellDue(unsure, []).until).toBe('its service days since 2026-04-30 are not all kept here');
    expect(await ranOn(before, '2026-05-02', '2026-05-03')).toMatchObject({ state: 'out' });
    // That its certificate was put by on its own day does not say that its runs were.
    expect((await ranOn({ ...steam, on: '2026-05-01' }, '2026-05-02')).state).toBe('unknown');
  });
});

describe('weekly, or before use if used less than weekly', () => {
  const weekly = {
    what: 'brake-test',
    on: '2026-05-01',
    interval: 'weekly, or before use if used less than weekly',
  };

  it('a tool, which never leaves with a train, is to be done before its next use, and is not out', async () => {
    const item = await ranOn({ ...weekly, what: 'measuring-tool', of: 'Track gauge 2' });
    expect(item.state).toBe('before-use');
    const { state, until } = tellDue(item, []);
    expect([state, until]).toEqual([
      'to be done before use',
      'to 2026-05-08, whether it was used since is not recorded here',
    ]);
  });
  it('what ran within the week is out; what rested is to be done before use', async () => {
    const ofFenwick = { ...weekly, of: 'Fenwick' };
    expect((await ranOn(ofFenwick, '2026-05-25')).state).toBe('out');
    const rested = await ranOn(ofFenwick, '2026-05-02');
    expect(rested.state).toBe('before-use');
    expect(rested).not.toHaveProperty('useUnsaid');
  });
  it('a line is used by whatever runs on it', async () => {
    const ofLine = { ...weekly, what: 'track-inspection', of: 'x' };
    expect((await ranOn(ofLine, '2026-05-25')).state).toBe('out');
    expect((await ranOn(ofLine, '2026-05-02')).state).toBe('before-use');
  });
});

describe('service days of what came from elsewhere', () => {
  const old = { ...steam, on: '2024-04-30', interval: '31 service days', by: 'An invented inspector' };

  it('nobody can tell, however long others have kept records here', async () => {
    const { store } = await shed(old);
    const ben = await author('gate');
    await said(store, ben, clockFrom('2020-05-01T08:00:00Z'), 'note', { text: 'gate painted' });
    await said(store, ada, clockFrom('2020-05-02T08:00:00Z'), 'certificate', {
      ...old,
      of: 'Granite',
      on: '2020-05-02',
    });
    await ran(store, ada, '2026-05-02');
    expect(await worst(store)).toMatchObject({ certificate: { of: 'Fenwick' }, state: 'unknown' });
  });

  it('a store that is put to it makes no test look in date: its engine had been a visitor there', async () => {
    const { store } = await shed(old);
    await ran(store, ada, '2026-05-02');
    const [host, ben] = [memoryStore(), await author('host')];
    for (const day of ['2023-05-01', '2024-05-05', '2025-05-01']) await ran(host, ben, day);
    expect((await worst(store)).state).toBe('unknown');
    for (const [into, from] of [
      [store, host],
      [host, store],
    ] as const)
      await take(into, await from.rows());
    for (const both of [store, host]) expect(await worst(both)).toMatchObject({ state: 'unknown' });
    // What the host knows of counts against it all the same.
    const few = { ...old, what: 'brake-test', interval: '3 service days' };
    await said(host, ada, clockFrom('2026-05-20T08:00:00Z'), 'certificate', few);
    expect(await worst(host)).toMatchObject({ certificate: { what: 'brake-test' }, state: 'out' });
  });

  it('are counted from where its own keeper began', async () => {
    const { store } = await shed({ ...steam, on: '2026-05-01', interval: '31 service days' });
    const ben = await author('gate');
    await ran(store, ada, KEPT);
    await ran(store, ben, '2026-05-09');
    await ran(store, ada, '2026-05-10');
    expect(await worst(store)).toMatchObject({ state: 'stands', serviceLeft: 29 });
    // Who amends a certificate answers for it.
    const { entries } = await look(store);
    const certificate = entries.find(({ body }) => body.kind === 'certificate') as Entry;
    await said(
      store,
      ben,
      clockFrom('2026-05-20T08:00:00Z'),
      'certificate',
      certificate.body.content,
      certificate.row.hash,
    );
    // From the first to the eighth it may have run each day, on the ninth and the tenth it did.
    expect(await worst(store)).toMatchObject({ state: 'stands', serviceLeft: 21, atLeast: true });
    const [long] = dueOn((await look(store)).entries, '2026-07-31');
    expect(long).toMatchObject({ state: 'stands', serviceLeft: 21, atLeast: true });
  });

  it('count however its name was spelled when it left', async () => {
    const { store } = await shed({ ...steam, interval: '2 service days' });
    await ran(store, ada, KEPT, 'Fenwick ');
    await ran(store, ada, '2026-05-02', 'FENWICK');
    expect(await worst(store)).toMatchObject({ state: 'stands', serviceLeft: 1 });
    await ran(store, ada, '2026-05-03', ' fenwick');
    expect((await worst(store)).state).toBe('out');
  });
});
