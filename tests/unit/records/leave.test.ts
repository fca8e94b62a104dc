/** Leaving: what is recorded, that nobody's name is in it, and that it gives the same answer again, byte for byte. */
import { describe, expect, it } from 'vitest';
import { answered } from '../../../desk/leave/answered.ts';
import { askedChecks, unsaidSky } from '../../../desk/leave/checks.ts';
import {
  departureContent,
  heldAgainst,
  hindrances,
  type Ready,
  readyToLeave,
  replay,
  stands,
} from '../../../desk/leave/depart.ts';
import { nameless } from '../../../desk/leave/nameless.ts';
import { tellHindrances } from '../../../desk/leave/tell.ts';
import { readOuting } from '../../../papers/index.ts';
import type { Check, Content } from '../../../papers/record/fields.ts';
import { canonical } from '../../../records/canonical.ts';
import { look } from '../../../records/ledger.ts';
import { personNamed } from '../../../records/names.ts';
import type { Entry, Json } from '../../../records/record.ts';
import { carried, service, stillOut, trips } from '../../../records/service.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { examplePaper } from '../../support/papers.ts';
import { runs } from '../../support/tier.ts';

const speech = { system: 'imperial', wording: 'us' } as const;

/** Everybody by a name of three words that no other paper has, with groups, notes and tests. */
async function peopled(name: string): Promise<Json> {
  const paper = await examplePaper(name);
  const riders = paper['riders'] as readonly (Json & { readonly name: string; readonly heldBy?: string })[];
  const called = (old: string): string => `Quenby ${old} Inventedname`;
  return {
    ...paper,
    note: 'asked for by Quenby Inventedname',
    tests: [],
    riders: riders.map((r, i) => ({
      ...r,
      name: called(r.name),
      ...(r.heldBy === undefined ? {} : { heldBy: called(r.heldBy) }),
      ...(i % 2 === 0 ? {} : { group: 'family Inventedname' }),
    })),
  };
}

async function ready(paper: Json): Promise<Ready> {
  const made = await readyToLeave(paper, speech);
  if ('problems' in made) throw new Error(JSON.stringify(made.problems));
  return made;
}

const examples = ['steam-light', 'heavy-air', 'busy-afternoon', 'too-long-wet', 'battery-vacuum'].slice(
  0,
  runs(1, 5),
);
const steam = await ready(await peopled('steam-light'));
const all = steam.asked;
const content = await departureContent(steam, all, '2026-05-31', async (name) =>
  `${name.length}`.padStart(64, '0'),
);

describe('the paper that is recorded', () => {
  it.each(examples)('of %s has no names, and the same answer but for them', async (name) => {
    const paper = await peopled(name);
    const bare = nameless(paper);
    expect(JSON.stringify(bare)).not.toMatch(/Quenby|Inventedname/);
    const [named, without] = [await answered(paper, speech), await answered(bare, speech)];
    if ('problems' in named || 'problems' in without) throw new Error('not read');
    const found = ({ answer }: typeof named) =>
      answer.findings.map((f) => [f.code, f.severity, f.where.vehicle]);
    expect(without.answer.verdict).toBe(named.answer.verdict);
    expect(found(without)).toEqual(found(named));
    expect(without.told[0]).toBe(named.told[0]);
  });

  it('keeps the certificates of its vehicles, of the club and of who is aboard, by number', () => {
    const what = { what: 'driver-competence', on: '2026-01-01' };
    const bare = nameless({
      heedway: 'outing',
      train: { vehicles: [{ vehicle: { name: 'Fenwick' } }, { count: 2, vehicle: { name: 'Car' } }] },
      riders: [{ name: 'Quenby Inventedname' }],
      shown: [
        what,
        ...['Fenwick', 'Car 2', 'quenby inventedname', 'Somebody Else'].map((of) => ({ ...what, of })),
      ],
    });
    expect(bare['shown']).toEqual([
      what,
      { ...what, of: 'Fenwick' },
      { ...what, of: 'Car 2' },
      { ...what, of: 'person 1' },
    ]);
  });

  it('keeps of grown people that they are grown, whether they ride or work, and of children how old they are', () => {
    const of = (host: object) =>
      (
        nameless({
          heedway: 'outing',
          host,
          riders: [
            { name: 'Ann', age: 71 },
            { name: 'Bo', age: '19 years' },
            { name: 'Cy', age: '7 years 6 months' },
            { name: 'Di', age: 71, duty: 'driver' },
            { name: 'Ed' },
          ],
        })['riders'] as readonly Json[]
      ).map(({ age }) => age);
    expect(of({})).toEqual([18, 18, '7 years 6 months', 18, undefined]);
    // A host who asks for older riders gets the same answer from it.
    expect(of({ youngestRider: { value: '21 years', source: 'x' } })).toEqual([
      21,
      '19 years',
      '7 years 6 months',
      21,
      undefined,
    ]);
    for (const rule of ['youngestDriver', 'youngestGuard', 'youngestLookout', 'drivesAlone'])
      expect(of({ [rule]: { value: 25, source: 'x' } })).toEqual([
        25,
        '19 years',
        '7 years 6 months',
        25,
        undefined,
      ]);
    const crew = nameless({
      heedway: 'outing',
      crew: [
        { name: 'Flo', age: 45, looksOutAt: 'x' },
        { name: 'Gil', age: 16, looksOutAt: 'x' },
      ],
    })['crew'] as readonly Json[];
    expect(crew.map(({ age }) => age)).toEqual([18, 16]);
  });

  it('keeps who is held by whom, and who belongs together', () => {
    const bare = nameless({
      heedway: 'outing',
      riders: [
        { name: 'Ann', group: 'a' },
        { name: 'Bo', heldBy: 'ann', group: 'a' },
        { name: 'Cy', group: 'b' },
      ],
    });
    expect(bare['riders']).toEqual([
      { name: 'person 1', group: 'group 1' },
      { name: 'person 2', heldBy: 'person 1', group: 'group 1' },
      { name: 'person 3', group: 'group 2' },
    ]);
  });
});

describe('a departure', () => {
  it('has the answer as told, its inputs, and riders by seat and group alone', () => {
    const text = canonical(content);
    expect(text).not.toMatch(/Quenby|Inventedname/);
    expect(content.told[0]).toBe('go within limits');
    expect(content.told.length).toBeGreaterThan(4);
    expect(content.crew).toEqual([{ duty: 'driver', person: expect.stringMatching(/^0+\d+$/) }]);
    for (const rider of content.riders)
      expect(Object.keys(rider).sort()).toEqual(['group', 'seat', 'vehicle']);
    expect(content.riders.length).toBe(steam.answered.outing.riders.length - 1);
  });

  const entry = (changed: Partial<Content<'departure'>> = {}): Entry =>
    ({ body: { content: { ...content, ...changed }, program: '0.2.0' }, row: {} }) as unknown as Entry;

  it('gives the same answer again, byte for byte', async () => {
    const again = await replay(entry(), '0.2.0');
    expect(again).toEqual({
      inputs: true,
      same: true,
      versions: { left: '0.2.0', today: '0.2.0' },
      gone: [],
      come: [],
    });
  });

  it('of another paper, or with another answer, it does not, and says what differs', async () => {
    const { answered: made } = steam;
    const other = { hash: 'f'.repeat(64), told: ['hold', ...made.told.slice(1)] };
    expect(await heldAgainst(entry(), other, '9.9.9')).toEqual({
      inputs: true,
      same: false,
      versions: { left: '0.2.0', today: '9.9.9' },
      gone: ['go within limits'],
      come: ['hold'],
    });
    expect(await heldAgainst(entry({ paper: { heedway: 'outing' } }), made, '0.2.0')).toMatchObject({
      inputs: false,
    });
    expect(await heldAgainst(entry({ answer: '0'.repeat(64) }), made, '0.2.0')).toMatchObject({
      same: false,
    });
    expect(await heldAgainst(entry({ told: ['go'] }), made, '0.2.0')).toMatchObject({ same: false });
  });
});

describe('what is seen to', () => {
  const asks = async (
    name: string,
    change: (paper: any) => void = () => undefined,
  ): Promise<readonly Check[]> => {
    const paper = structuredClone(await examplePaper(name)) as any;
    change(paper);
    const read = await readOuting({ path: 'x', content: JSON.stringify(paper) }, async () => undefined);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return askedChecks(read.value);
  };

  it('is as much as train, people and hour ask for', async () => {
    expect(await asks('heavy-air')).toEqual(['brake-test', 'hose-off', 'signals', 'briefed']);
    const night = (p: any): void => {
      p.conditions.night = true;
      p.riders = p.riders.filter((r: any) => r.duty === 'driver');
      for (const { vehicle } of p.train.vehicles) vehicle.brakes = [];
    };
    expect(await asks('heavy-air', night)).toEqual(['brake-test', 'lights']);
  });
});

describe('what hinders', () => {
  const day = '2026-05-31';
  it('nothing, with all seen to on its day', () => expect(hindrances(stands(steam), all, day)).toEqual([]));
  it('each check that was not made', () =>
    expect(hindrances(stands(steam), all.slice(1), day)).toEqual([{ what: 'checks', checks: [all[0]] }]));
  it('another day', () =>
    expect(hindrances(stands(steam), all, '2026-06-01')).toEqual([
      { what: 'day', of: day, today: '2026-06-01' },
    ]));
  it('a vehicle that is out', () =>
    expect(hindrances(stands(steam), all, day, ['abc'])).toEqual([{ what: 'out', departure: 'abc' }]));
  it('records of which one is not as it was written: it may be what shuts the line', () =>
    expect(hindrances(stands(steam), all, day, [], 1)).toEqual([{ what: 'amiss', faults: 1 }]));
  it('nobody who drives', () =>
    expect(hindrances({ ...stands(steam), driven: false }, all, day)).toEqual([{ what: 'driver' }]));
  it('weather and night by which the host has rules and that nobody has looked at', () => {
    const { outing } = steam.answered;
    const rule = <T>(value: T) => ({ value, source: 'book' });
    const unsaid = (host: object, sky: object = {}, nightSaid = false) =>
      unsaidSky(
        { ...outing, host: { ...outing.host, ...host }, conditions: { ...outing.conditions, ...sky } },
        nightSaid,
      );
    expect(unsaid({})).toEqual([]);
    const limits = { lightningStops: rule(true), mostWind: rule(10), mostHeat: rule(308) };
    expect(unsaid(limits)).toEqual(['lightning', 'wind', 'heat']);
    expect(unsaid(limits, { lightning: false, wind: 3, temperature: 290 })).toEqual([]);
    for (const byNight of [
      { runsAtNight: rule(false) },
      { guardAtNight: rule(true) },
      { mostDrivingAtNight: rule(9) },
    ])
      expect([unsaid(byNight), unsaid(byNight, {}, true)]).toEqual([['night'], []]);
    const asked = { ...stands(steam), unsaid: ['wind'] as const };
    expect(hindrances(asked, all, day)).toEqual([{ what: 'sky', of: ['wind'] }]);
    expect(tellHindrances(hindrances(asked, all, day))[0]).toContain('how hard the wind blows');
  });
  it.each(['hold', 'unknown'] as const)('the word %s', (verdict) => {
    expect(hindrances({ ...stands(steam), verdict }, all, day)).toEqual([{ what: 'word', word: verdict }]);
  });
});

const [store, ada] = [memoryStore(), await author()];
const { person } = await personNamed(store, 'Quenby Inventedname');
const leaves = async (day: string, vehicles: readonly string[]): Promise<Entry> =>
  said(store, ada, clockFrom(`${day}T10:00:00Z`), 'departure', {
    ...content,
    crew: [{ duty: 'driver', person }],
    vehicles,
  });
const arrives = (of: Entry, day: string, more: Json, amends?: string): Promise<Entry> =>
  said(store, ada, clockFrom(`${day}T12:00:00Z`), 'arrival', { departure: of.row.hash, ...more }, amends);
const first = await leaves('2026-05-30', ['Engine', 'Car 1']);
const wrong = await arrives(first, '2026-05-30', { distance: '5 mile', carried: 9 });
await arrives(first, '2026-05-30', { distance: '1 mile', carried: 8 }, wrong.row.hash);
const second = await leaves('2026-05-30', ['Engine', 'Car 2']);
await arrives(second, '2026-05-30', {});
const third = await leaves('2026-05-31', ['Engine']);
const ran = trips((await look(store)).entries);

describe('what comes out of departures and arrivals', () => {
  it('service days, distance as it was last said, and what nobody said', () =>
    expect(service(ran)).toEqual([
      { vehicle: 'Car 1', days: ['2026-05-30'], distance: 1609.344, runs: 1, unsaid: 0 },
      { vehicle: 'Car 2', days: ['2026-05-30'], distance: 0, runs: 1, unsaid: 1 },
      { vehicle: 'Engine', days: ['2026-05-30', '2026-05-31'], distance: 1609.344, runs: 3, unsaid: 2 },
    ]));

  it('riders carried, and of how many runs nobody said', () =>
    expect(carried(ran)).toEqual({ riders: 8, unsaid: 2 }));

  it('which vehicles are still out', () => {
    expect(stillOut(ran, ['Engine', 'Car 2']).map((t) => t.departure.first.row.hash)).toEqual([
      third.row.hash,
    ]);
    expect(stillOut(ran, ['Car 1', 'Car 2'])).toEqual([]);
  });
});
