/** Certificates in a store of their own, by one author. */
import { type DueItem, dueOn } from '../../records/due.ts';
import { look, put } from '../../records/ledger.ts';
import type { Author, Entry, Json } from '../../records/record.ts';
import type { Store } from '../../records/store.ts';
import { memoryStore } from '../../records/stores/memory.ts';
import { author, clockFrom, said } from './club-records.ts';

export const ada: Author = await author();

export async function shed(
  ...certificates: readonly Json[]
): Promise<{ store: Store; entries: readonly Entry[] }> {
  const [store, clock] = [memoryStore(), clockFrom()];
  for (const content of certificates)
    await said(store, ada, clock, 'certificate', { by: 'An invented inspector', ...content });
  return { store, entries: (await look(store)).entries };
}

/** What goes by service days, and runs that count some. */
export const steam = {
  what: 'boiler-steam-test',
  of: 'Fenwick',
  on: '2026-05-01',
  interval: '2 service days',
};
const hash = '0'.repeat(64);
export const ran = async (
  store: Store,
  who: Author,
  day: string,
  vehicle = 'Fenwick',
  when?: string,
): Promise<void> => {
  const left = {
    outing: 'x',
    date: '2026-05-01',
    line: 'x',
    train: 'x',
    vehicles: [vehicle],
    rail: 'dry',
    word: 'go',
    told: ['go'],
    units: 'imperial',
    wording: 'us',
    answer: hash,
    inputs: hash,
    paper: {},
    crew: [],
    riders: [],
    done: [],
    notDone: [],
  };
  const clock = clockFrom(`${day}T09:00:00Z`);
  await put(store, { kind: 'departure', content: left, said: when ?? clock.now() }, who, clock);
};
export const worst = async (store: Store): Promise<DueItem> =>
  dueOn((await look(store)).entries, '2026-05-31')[0];
export const ranOn = async (test: Json, ...days: readonly string[]): Promise<DueItem> => {
  const { store } = await shed(test);
  for (const day of days) await ran(store, ada, day);
  return worst(store);
};
