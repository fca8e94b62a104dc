/** What left the rails holds every train that it is in, until somebody has gone through it by a list for that. */
import { expect, it } from 'vitest';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import { derailed } from '../../../records/incidents.ts';
import { look } from '../../../records/ledger.ts';
import type { Entry, Json } from '../../../records/record.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { examplePaper } from '../../support/papers.ts';

const LIST = {
  list: 'Any vehicle, after a derailment',
  listHash: 'a'.repeat(64),
  when: 'after-derailment',
  looked: [{ item: 'wheels', ask: 'wheels tight', result: 'right' }],
};
const off = (more: Json = {}): Json => ({ what: 'derailment', facts: 'both axles down', ...more });

async function club() {
  const [store, ada, clock] = [memoryStore(), await author(), clockFrom()];
  const entries = async (): Promise<readonly Entry[]> => (await look(store)).entries;
  return {
    entries,
    say: (kind: Parameters<typeof said>[3], content: Json, amends?: string) =>
      said(store, ada, clock, kind, content, amends),
    of: async (): Promise<string[]> => derailed(await entries()).map(({ of }) => of),
  };
}

it('the vehicle that was named, until it was gone through later', async () => {
  const { say, of } = await club();
  await say('inspection', { ...LIST, of: 'Light car 2' });
  const incident = await say('incident', off({ vehicle: 'light CAR 2' }));
  // Before it nobody looked at what it did.
  expect(await of()).toEqual(['light CAR 2']);
  await say('inspection', { ...LIST, of: 'Light car 2', when: 'daily' });
  await say('inspection', { ...LIST, of: 'Light car 3' });
  expect(await of()).toEqual(['light CAR 2']);
  await say('inspection', { ...LIST, of: 'Light car 2' });
  expect(await of()).toEqual([]);
  const again = await say('incident', off({ vehicle: 'Light car 2' }));
  expect(await of()).toEqual(['Light car 2']);
  // It was something else: said anew.
  await say('incident', { ...off({ vehicle: 'Light car 2' }), what: 'near-miss' }, again.row.hash);
  expect(await of()).toEqual([]);
  await say('incident', off({ vehicle: 'Light car 4' }), incident.row.hash);
  expect(await of()).toEqual(['Light car 4']);
});

it('nobody said which: all of the train that had left, else the line', async () => {
  const { say, of } = await club();
  const departure = await say('departure', {
    outing: 'Sunday',
    date: '2026-05-01',
    line: 'Loop',
    train: 'Train',
    vehicles: ['Engine', 'Car 1'],
    rail: 'dry',
    word: 'go',
    told: ['go'],
    units: 'metric',
    wording: 'uk',
    answer: 'b'.repeat(64),
    inputs: 'c'.repeat(64),
    paper: {},
    crew: [],
    riders: [],
    done: [],
    notDone: [],
  });
  await say('incident', off({ departure: departure.row.hash, line: 'Loop' }));
  expect(await of()).toEqual(['Engine', 'Car 1']);
  await say('inspection', { ...LIST, of: 'Engine' });
  expect(await of()).toEqual(['Car 1']);
  await say('incident', off({ line: 'Loop' }));
  await say('incident', off());
  expect(await of()).toEqual(['Car 1', 'Loop']);
});

it('stands in the paper of every outing with it, and in no other', async () => {
  const { say, entries } = await club();
  const paper = await examplePaper('steam-light');
  const [{ name, vehicle }] = (paper['train'] as { vehicles: { name?: string; vehicle: Json }[] }).vehicles;
  const engine = String(name ?? vehicle['name']);
  await say('incident', off({ vehicle: engine }));
  await say('incident', off({ vehicle: 'Somebody else’s car' }));
  const shown = withShown(paper, recorded(await entries(), [], '2026-05-02'));
  expect(shown['defects']).toMatchObject([{ of: engine, rejects: true, since: '2026-05-01' }]);
  await say('inspection', { ...LIST, of: engine });
  expect(withShown(shown, recorded(await entries(), [], '2026-05-02'))['defects']).toBeUndefined();
});
