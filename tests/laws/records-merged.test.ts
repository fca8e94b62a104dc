/**
 * Devices that write apart for weeks, exchange some of it now and then, and are put together at last: whoever takes whose
 * records first, it is one set, and it says one thing. Clocks go wrong; two say the same record anew without knowing.
 */
import { expect, it } from 'vitest';
import { standing } from '../../records/amended.ts';
import { dueOn } from '../../records/due.ts';
import { storeFile } from '../../records/file.ts';
import { openDefects } from '../../records/inspections.ts';
import { type Clock, look, take } from '../../records/ledger.ts';
import type { Author, Entry } from '../../records/record.ts';
import { service, trips } from '../../records/service.ts';
import type { Store } from '../../records/store.ts';
import { memoryStore } from '../../records/stores/memory.ts';
import { author, said } from '../support/club-records.ts';
import { runs } from '../support/tier.ts';

function chances(seed: number): (most: number) => number {
  let at = seed;
  return (most) => {
    at = (Math.imul(at, 1664525) + 1013904223) >>> 0;
    return Math.floor((at / 2 ** 32) * most);
  };
}

interface Device {
  readonly store: Store;
  readonly who: Author;
  readonly clock: Clock;
  readonly known: Entry[];
}

const DEVICES = 3;
const vehicles = ['Car 1', 'Car 2', 'Engine'];
const HASH = 'a'.repeat(64);

/** Six hours later each time that it is looked at: what a test writes takes weeks. */
function slowClock(start: string): Device['clock'] {
  let at = Date.parse(start);
  return {
    now: () => {
      at += 6 * 3_600_000;
      return `${new Date(at).toISOString().slice(0, 19)}+00:00`;
    },
    program: '0.0.0',
  };
}

/** Its clock is right, or hours ahead. */
const device = async (i: number): Promise<Device> => ({
  store: memoryStore(),
  who: await author(`${i}`),
  clock: slowClock(`2026-05-01T0${3 * i}:00:00Z`),
  known: [],
});

/** One record more: anything that changes what a view says. */
async function writes({ store, who, clock, known }: Device, chance: (most: number) => number): Promise<void> {
  const of = vehicles[chance(3)];
  const on = `2026-0${1 + chance(5)}-1${chance(9)}`;
  const certificate = { what: 'chains', of, on, interval: '3 months', by: 'shed' };
  const looked = [
    { item: 'wheels', ask: 'Wheels', result: chance(2) === 0 ? 'right' : 'reject', note: `n${chance(99)}` },
  ];
  const inspection = { list: 'Car', listHash: HASH, when: 'daily', of, looked };
  const before = known[chance(Math.max(1, known.length))];
  const what = chance(10);
  const add = async (
    ...args: Parameters<typeof said> extends [Store, Author, unknown, ...infer R] ? R : never
  ) => known.push(await said(store, who, clock, ...args));
  if (what < 3) await add('certificate', certificate);
  else if (what < 6) await add('inspection', inspection);
  else if (what === 6 && before?.body.kind === 'inspection')
    await add('mended', { inspection: before.row.hash, item: 'wheels', what: 'turned' });
  else if (what > 6 && before?.body.kind === 'certificate')
    await add('certificate', { ...certificate, of: before.body.content['of'] }, before.row.hash);
  else await add('note', { text: `${chance(999)}` });
}

async function takes(one: Device, other: Device): Promise<void> {
  await take(one.store, await other.store.rows());
  one.known.splice(0, Number.POSITIVE_INFINITY, ...(await look(one.store, 'chain')).entries);
}

/** All that anybody sees of it. */
async function view(store: Store): Promise<string> {
  const { entries, faults, forks } = await look(store, 'chain');
  return JSON.stringify([
    faults,
    forks,
    standing(entries).map(({ first, content, amendments }) => [first.row.hash, content, amendments.length]),
    dueOn(entries, '2026-05-10').map(({ certificate, state, last }) => [certificate, state, last]),
    openDefects(entries).map(({ of, item, what }) => [of, item, what]),
    service(trips(entries)),
    await storeFile({ entries }),
  ]);
}

it.each(Array.from({ length: runs(2, 60) }, (_, i) => 20260501 + i))(
  'weeks apart, put together: %i',
  async (seed) => {
    const chance = chances(seed);
    const devices = await Promise.all(Array.from({ length: DEVICES }, (_, i) => device(i)));
    for (let step = 0; step < runs(90, 400); step++) {
      const one = devices[chance(DEVICES)];
      if (chance(25) === 0) await takes(one, devices[chance(DEVICES)]);
      else await writes(one, chance);
    }
    const views: string[] = [];
    for (let order = 0; order < 4; order++) {
      const store = memoryStore();
      const left = [...devices];
      while (left.length > 0) {
        const [next] = left.splice(chance(left.length), 1);
        const rows = await next.store.rows();
        // In two pieces, the later first.
        const cut = chance(rows.length + 1);
        await take(store, rows.slice(cut));
        await take(store, rows.slice(0, cut));
      }
      views.push(await view(store));
    }
    expect(views[0]).toMatch(/^\[\[\],\[\],\[\[/);
    expect(new Set(views).size).toBe(1);
    // None of them was lost.
    const all = new Set(
      (await Promise.all(devices.map(({ store }) => store.rows()))).flat().map(({ hash }) => hash),
    );
    expect([...all].filter((hash) => !views[0].includes(hash))).toEqual([]);
  },
);
