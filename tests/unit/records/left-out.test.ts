/**
 * Each field that a record may leave out, left out once, for every kind: with the record the outing stands as it should, without the field it
 * never stands better. What is not said is not safe.
 */
import { describe, expect, it } from 'vitest';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import { verdictOf } from '../../../engine/answer/verdict.ts';
import { askCrew } from '../../../engine/questions/crew/ask.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import { readOuting } from '../../../papers/index.ts';
import { checkContent } from '../../../papers/record/check.ts';
import { type Kind, kinds } from '../../../papers/record/fields.ts';
import { ended } from '../../../records/ended.ts';
import { look } from '../../../records/ledger.ts';
import { personNamed } from '../../../records/names.ts';
import type { Json } from '../../../records/record.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { examplePaper } from '../../support/papers.ts';

const DAY = '2026-05-31';
const HASH = 'a'.repeat(64);
const source = 'rule 1';
const steam = (await examplePaper('steam-light')) as Json;
const { driver, engine, line } = await (async () => {
  const read = await readOuting({ path: 'o', content: JSON.stringify(steam) }, async () => undefined);
  if (!read.ok) throw new Error('no example');
  const { riders, train, line } = read.value;
  return {
    driver: riders.find(({ duty }) => duty === 'driver')?.name ?? '',
    engine: train.vehicles[0].name,
    line: line.name,
  };
})();

/** Asks of the engine, the driver and the club, and how long the driver rested. */
const asked: Json = {
  ...steam,
  date: DAY,
  back: `${DAY}T17:00`,
  host: {
    ...(steam['host'] as Json),
    inDate: [
      { what: 'boiler-hydraulic-test', of: 'engine', by: ['An inspector'], source },
      { what: 'driver-competence', of: 'driver', source },
      { what: 'insurance', of: 'club', source },
      { what: 'inspection', of: 'engine', source },
    ],
    leastRest: { value: '8 h', source },
    mostOnDuty: { value: '12 h', source },
  },
};

interface Entry {
  readonly kind: Kind;
  readonly content: Json;
  /** Which of those before it this one names, by its place, in which field. */
  readonly names?: readonly [string, number];
  readonly at?: string;
}

const all = { list: 'L', listHash: HASH, when: 'daily', of: engine };
const right = { item: 'glass', ask: 'Glass clear', result: 'right', value: '3 in', note: 'new', photo: HASH };
const departure: Json = {
  ...{ outing: 'o', date: '2026-05-30', line, train: 't', vehicles: [engine], rail: 'dry', word: 'go' },
  ...{ told: ['GO'], units: 'metric', wording: 'uk', answer: HASH, inputs: HASH, paper: {}, crew: [] },
  ...{ riders: [{ vehicle: engine, seat: '1', group: 'adult' }], done: [], notDone: [], against: 'late' },
};

/** All is well: every certificate stands, the driver rested, nothing is shut. */
const well = (person: string): Entry[] => [
  { kind: 'author', content: { person } },
  {
    kind: 'certificate',
    content: {
      ...{
        what: 'boiler-hydraulic-test',
        of: engine,
        on: '2026-01-02',
        until: '2026-12-31',
        interval: '1 year',
      },
      ...{ by: 'An inspector', details: '150 psi' },
    },
  },
  {
    kind: 'certificate',
    content: {
      ...{ what: 'driver-competence', person, on: '2026-01-02', until: '2026-12-31', by: 'A club' },
      signedFor: { powers: ['steam'], line },
    },
  },
  {
    kind: 'certificate',
    content: { what: 'insurance', on: '2026-01-02', interval: '1 year', by: 'An insurer' },
  },
  { kind: 'inspection', content: { ...all, looked: [right] } },
  { kind: 'turn', content: { person, what: 'on', freeSince: '2026-05-30T20:00' }, at: `${DAY}T08:00:00Z` },
  { kind: 'departure', content: departure },
  { kind: 'arrival', content: { distance: '900 m', carried: 3, events: 'none' }, names: ['departure', 6] },
  {
    kind: 'incident',
    content: {
      ...{ what: 'derailment', facts: 'wheel off', line, at: '20 m', place: 'frog', direction: 'forward' },
      ...{
        vehicle: engine,
        axle: 1,
        side: 'left',
        speed: '1 m/s',
        rail: 'dry',
        hurt: 'nobody',
        saw: [person],
      },
    },
    names: ['departure', 6],
  },
  { kind: 'measure', content: { what: 'new frog', by: '2026-06-30', person }, names: ['incident', 8] },
  { kind: 'measured', content: { what: 'fitted' }, names: ['measure', 9] },
  {
    kind: 'restriction',
    content: { line, from: '10 m', to: '20 m', speed: '2 m/s', why: 'soft' },
    names: ['because', 8],
  },
  { kind: 'lifted', content: { why: 'packed', person }, names: ['restriction', 11] },
  { kind: 'note', content: { text: 'rail greasy' } },
  { kind: 'retention', content: { kind: 'note', keep: '3 years', source } },
  { kind: 'inspection', content: { ...all, when: 'after-derailment', looked: [right] } },
];

/** Each of these is in the way, for a reason of its own. */
const amiss = (person: string): Record<string, Entry[]> => {
  const but = (n: number, more: Json): Entry[] =>
    well(person).map((one, i) => (i === n ? { ...one, content: { ...one.content, ...more } } : one));
  return {
    'a test that is out': but(1, { on: '2024-01-02', until: '2024-12-31' }),
    'a test by another': but(1, { by: 'A stranger' }),
    'a driver who is out': but(2, { until: '2026-02-01' }),
    'an engine that left the rails': well(person).slice(0, -1),
    'a rejected glass': but(4, { looked: [{ ...right, result: 'reject' }] }),
    'too short a rest': but(5, { freeSince: `${DAY}T05:00` }),
    'a slow stretch': well(person).filter(({ kind }) => kind !== 'lifted'),
    'a shut stretch': well(person).flatMap((one): Entry[] => {
      if (one.kind === 'lifted') return [];
      const { speed: _, ...shut } = one.content;
      return [one.kind === 'restriction' ? { ...one, content: shut } : one];
    }),
  };
};

const order = ['go', 'limits', 'unknown', 'hold'];

/** How far an outing is from leaving, by what is recorded. */
async function standsAt(entries: readonly Entry[], person: string, store = memoryStore()): Promise<number> {
  const ada = await author();
  await store.name({ person, salt: '00', name: driver });
  const hashes: string[] = [];
  for (const { kind, content, names, at } of entries) {
    const named = names ? { [names[0]]: hashes[names[1]] } : {};
    const clock = clockFrom(at ?? `${DAY}T07:00:00Z`);
    hashes.push((await said(store, ada, clock, kind, { ...content, ...named })).row.hash);
  }
  const looked = await look(store, 'chain');
  expect(looked.faults).toEqual([]);
  // Nothing that an answer hangs on has ended, whatever is left out.
  expect(ended(looked.entries, DAY)).toEqual([]);
  const put = withShown(asked, recorded(looked.entries, await store.names(), DAY));
  const read = await readOuting({ path: 'o', content: JSON.stringify(put) }, async () => undefined);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('; '));
  const findings = [...askOrder(read.value), ...askCrew(read.value)];
  return order.indexOf(verdictOf(findings));
}

/** Paths to all that a content has and may leave out. */
function mayLeave(kind: Kind, json: unknown, at: readonly (string | number)[] = []): (string | number)[][] {
  if (typeof json !== 'object' || json === null) return [];
  return Object.entries(json).flatMap(([key, part]) => {
    const path = [...at, Array.isArray(json) ? Number(key) : key];
    return [path, ...mayLeave(kind, part, path)];
  });
}

function without(json: unknown, [first, ...rest]: readonly (string | number)[]): unknown {
  if (Array.isArray(json))
    return rest.length === 0
      ? json.toSpliced(Number(first), 1)
      : json.map((one, i) => (i === first ? without(one, rest) : one));
  const { [first]: part, ...left } = json as Json;
  return rest.length === 0 ? left : { ...left, [first]: without(part, rest) };
}

/** What a sign-off is not limited to it is good for: that is how they are written, and said so where it is typed. */
const unlimited = (path: readonly (string | number)[]): boolean => path.includes('signedFor');

const left = (entries: readonly Entry[]): { readonly told: string; readonly entries: readonly Entry[] }[] =>
  entries.flatMap((one, i) =>
    mayLeave(one.kind, one.content)
      .filter((path) => !unlimited(path))
      .flatMap((path) => {
        const content = without(one.content, path) as Json;
        const names = one.names ? { [one.names[0]]: HASH } : {};
        if (one.content === undefined || !checkContent(one.kind, { ...content, ...names }).ok) return [];
        return [{ told: `${one.kind} ${path.join('.')}`, entries: entries.with(i, { ...one, content }) }];
      }),
  );

const { person } = await personNamed(memoryStore(), driver);

describe('left out, field by field', () => {
  it('there is a record of every kind, but of those that an outing never sees', () => {
    const here = new Set(well(person).map(({ kind }) => kind));
    const not = Object.keys(kinds).filter((kind) => !here.has(kind as Kind));
    expect(not.sort()).toEqual(['mended', 'removal']);
  });

  it('where all is well, what the host asks of is missed', async () => {
    expect(await standsAt(well(person), person)).toBe(0);
    const worse: string[] = [];
    for (const { told, entries } of left(well(person)))
      if ((await standsAt(entries, person)) > 0) worse.push(told);
    expect(worse).toEqual([
      'certificate of',
      'certificate person',
      'certificate until',
      'certificate interval',
      'turn freeSince',
    ]);
  });

  it.each(Object.entries(amiss(person)))('%s: nothing that is left out makes it safe', async (_, entries) => {
    const at = await standsAt(entries, person);
    expect(at).toBeGreaterThan(0);
    for (const one of left(entries)) {
      const now = await standsAt(one.entries, person);
      // Where nobody can tell any more it does not leave either.
      expect(now, one.told).toBeGreaterThanOrEqual(Math.min(at, 2));
    }
  });
});
