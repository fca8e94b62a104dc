/**
 * A year of an invented club's records, by a seed: three devices, run days from spring to late autumn and at Christmas, lists
 * gone through before each, what was found amiss and mended, certificates done anew. The same seed gives the same file, byte for byte.
 */
import { exampleLists } from '../../data/inspection-lists/index.ts';
import { inspectionContent, type Looked } from '../../desk/inspect/inspection.ts';
import { departureContent, type Ready } from '../../desk/leave/depart.ts';
import { plusDays } from '../../papers/due/day.ts';
import type { InspectionList } from '../../papers/inspection/fields.ts';
import { readList } from '../../papers/inspection/read.ts';
import type { Kind } from '../../papers/record/fields.ts';
import { storeFile } from '../../records/file.ts';
import { hex, sha256 } from '../../records/hash.ts';
import { look, put } from '../../records/ledger.ts';
import { personOf } from '../../records/names.ts';
import type { Author, Entry, Json } from '../../records/record.ts';
import { memoryStore } from '../../records/stores/memory.ts';
import { happened } from './happened.ts';

/** First and last day, both in it. */
export const FROM = '2025-06-01';
export const TO = '2026-05-31';

/** Of the program that is said to have written them; replaying says what differs under another. */
const PROGRAM = '0.2.0';

export const people = {
  shed: 'Ada Quillfeather',
  gate: 'Barnaby Marrowby',
  track: 'Clementine Hobday',
} as const;
type Device = keyof typeof people;

export interface Club {
  readonly seed: number;
  /** An outing made ready to leave; of each train one. */
  readonly ready: (train: 'steam' | 'battery') => Promise<Ready>;
}

/** The same chances for the same seed (mulberry32). */
function chances(seed: number): () => number {
  let at = seed;
  return () => {
    at = (at + 0x6d2b79f5) | 0;
    let t = Math.imul(at ^ (at >>> 15), 1 | at);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A key that everybody can make: nobody's but the example's. */
async function authorOf(device: Device, seed: number): Promise<Author> {
  const secret = await sha256(`invented club ${seed}, ${device}`);
  const bytes = Uint8Array.from(Buffer.from(`302e020100300506032b657004220420${secret}`, 'hex'));
  const ed = { name: 'Ed25519' };
  const sign = await crypto.subtle.importKey('pkcs8', bytes, ed, true, ['sign']);
  const { x = '' } = await crypto.subtle.exportKey('jwk', sign);
  const name = hex(new Uint8Array(Buffer.from(x, 'base64url')));
  return { name, device, keys: { name, sign } };
}

async function list(id: string): Promise<InspectionList> {
  const read = readList(exampleLists[id]);
  if (!read.ok) throw new Error(`no list ${id}`);
  return read.value;
}

/** What is found amiss now and then: the item, what is said of it, how it is mended. */
const amiss: Readonly<Record<string, readonly (readonly [string, 'limit' | 'reject', string, string])[]>> = {
  'steam-daily': [
    ['lagging', 'limit', 'loose at the dome', 'two bands renewed'],
    ['water-glass', 'reject', 'blows by at the lower gland', 'gland packed anew, blown through twice'],
  ],
  'car-before-use': [
    ['couplers', 'limit', 'pin bent, turns hard', 'pin replaced'],
    ['wheels', 'reject', 'flat on one tread', 'wheelset turned'],
  ],
  'track-walk': [
    ['gauge', 'limit', 'wide by 1/16 in at the tunnel mouth', 'two ties screwed anew'],
    ['clear', 'limit', 'branch over the cutting', 'cut back'],
  ],
};

const certificates: readonly (readonly [device: Device, content: Json, daysAfter?: number])[] = [
  [
    'shed',
    {
      what: 'boiler-hydraulic-test',
      of: 'Fenwick',
      on: '2024-03-02',
      interval: '3 years',
      by: 'An invented inspector',
      details: 'Pressure and factor as the host’s paper asks.',
    },
  ],
  [
    'shed',
    {
      what: 'boiler-steam-test',
      of: 'Fenwick',
      on: '2025-05-20',
      interval: 'annually, not to exceed 14 months',
      by: 'An invented inspector',
    },
    371,
  ],
  [
    'shed',
    {
      what: 'boiler-external-look',
      of: 'Fenwick',
      on: '2025-05-20',
      interval: '1 year, end of month',
      by: 'An invented inspector',
    },
  ],
  [
    'shed',
    {
      what: 'brake-test',
      of: 'Fenwick',
      on: '2025-05-31',
      interval: '10 service days',
      runsKeptSince: '2025-05-31',
      by: 'Heap Lane shed',
    },
    150,
  ],
  [
    'shed',
    { what: 'chains', of: 'Light car 1', on: '2025-05-31', interval: 'annually', by: 'Heap Lane shed' },
    362,
  ],
  [
    'shed',
    { what: 'chains', of: 'Light car 2', on: '2025-05-31', interval: 'annually', by: 'Heap Lane shed' },
    362,
  ],
  [
    'shed',
    {
      what: 'lifting-gear',
      of: 'Traverser hoist',
      on: '2025-05-11',
      interval: '1 year, 30 days of grace',
      by: 'An invented inspector',
    },
  ],
  ['gate', { what: 'insurance', on: '2025-06-01', until: '2026-05-31', by: 'An invented insurer' }],
  [
    'gate',
    { what: 'first-aid', person: 'gate', on: '2024-09-14', interval: '3 years', by: 'An invented school' },
  ],
  [
    'shed',
    {
      what: 'driver-competence',
      person: 'shed',
      on: '2025-04-05',
      interval: '2 years',
      by: 'An invented examiner',
    },
  ],
  [
    'gate',
    {
      what: 'driver-competence',
      person: 'gate',
      on: '2024-05-18',
      interval: '2 years',
      by: 'An invented examiner',
    },
  ],
  [
    'track',
    {
      what: 'track-inspection',
      of: 'Larkfield Hollow',
      on: '2025-05-30',
      interval: '6 months',
      by: 'An invented engineer',
    },
    175,
  ],
  [
    'track',
    {
      what: 'measuring-tool',
      of: 'Gauge bar 2',
      on: '2025-02-01',
      interval: '1 year',
      by: 'An invented workshop',
    },
  ],
];

/** Every other Sunday while the days are long, and two before Christmas. */
const runDays: readonly string[] = [
  ...Array.from({ length: 11 }, (_, i) => plusDays('2025-06-01', 14 * i)),
  '2025-12-14',
  '2025-12-21',
  ...Array.from({ length: 4 }, (_, i) => plusDays('2026-04-19', 14 * i)),
];

/** The file of a year, with the names: all of them invented. */
export async function clubYear({ seed, ready }: Club): Promise<string> {
  const chance = chances(seed);
  const store = memoryStore();
  const devices = Object.keys(people) as Device[];
  const authors = new Map(
    await Promise.all(devices.map(async (device) => [device, await authorOf(device, seed)] as const)),
  );
  const persons = new Map<string, string>();
  for (const device of devices) {
    const name = people[device];
    const salt = (await sha256(`salt ${seed} ${name}`)).slice(0, 32);
    const person = await personOf(name, salt);
    persons.set(device, person);
    await store.name({ person, salt, name });
  }
  let minutes = 0;
  let day = FROM;
  /** Greenwich or its summer time: what matters is that the day is the place's. */
  const now = (): string => {
    const [h, m] = [Math.floor(minutes / 60), minutes % 60].map((n) => `${n}`.padStart(2, '0'));
    return `${day}T${h}:${m}:00+00:00`;
  };
  const say = async (device: Device, kind: Kind, content: Json, after = 3): Promise<Entry> => {
    minutes += after;
    const author = authors.get(device) as Author;
    const done = await put(store, { kind, content, said: now() }, author, { now, program: PROGRAM });
    if (!done.ok) throw new Error(`${kind}: ${JSON.stringify(done.troubles)}`);
    return done.entry;
  };
  const goThrough = async (device: Device, id: string, of: string): Promise<void> => {
    const asked = await list(id);
    const said: Record<string, Looked> = Object.fromEntries(
      asked.items.map((item) => [item.id, { result: 'right' as const }]),
    );
    // The lagging is loose on the last day, and stays open.
    const last = day === TO && id === 'steam-daily';
    const [item, result, note, mended] = amiss[id][last ? 0 : Math.floor(chance() * amiss[id].length)];
    const found = last || chance() < 0.14;
    if (found) said[item] = { result, note };
    const { row } = await say(device, 'inspection', await inspectionContent(asked, of, said), 8);
    if (found && !last) await say(device, 'mended', { inspection: row.hash, item, what: mended }, 20);
  };
  const allRight = async (device: Device, id: string, of: string): Promise<void> => {
    const asked = await list(id);
    const said = Object.fromEntries(asked.items.map((item) => [item.id, { result: 'right' as const }]));
    await say(device, 'inspection', await inspectionContent(asked, of, said), 8);
  };
  const certificate = (device: Device, { person, ...content }: Json): Promise<Entry> =>
    say(device, 'certificate', {
      ...content,
      ...(person === undefined ? {} : { person: persons.get(`${person}`) }),
    });
  const LINE = 'Larkfield Hollow';
  /** Said on the next run day: what was done, and that a limit is lifted. */
  let pending: (() => Promise<unknown>)[] = [];
  const tell = async (number: number, departure: Entry): Promise<void> => {
    const what = happened.get(number);
    if (!what) return;
    const saw = [persons.get('gate')];
    const content = { ...what.incident, line: LINE, departure: departure.row.hash, saw };
    const { row } = await say('gate', 'incident', content, 12);
    const { what: kind, vehicle } = what.incident;
    if (kind === 'derailment') pending.push(() => allRight('shed', 'after-derailment', `${vehicle}`));
    if (what.slow) {
      const limit = await say('track', 'restriction', { ...what.slow, line: LINE, because: row.hash }, 6);
      const why = 'walked, gauge and wheel measured, run over six times empty';
      pending.push(() => say('track', 'lifted', { restriction: limit.row.hash, why }, 4));
    }
    if (!what.measure) return;
    const { days, done, what: todo } = what.measure;
    const asked = { incident: row.hash, what: todo, by: plusDays(day, days), person: persons.get('track') };
    const measure = await say('gate', 'measure', asked, 5);
    if (done !== undefined)
      pending.push(() => say('track', 'measured', { measure: measure.row.hash, what: done }, 4));
  };
  const run = async (train: 'steam' | 'battery', driver: Device): Promise<Entry> => {
    const made = await ready(train);
    if (!['go', 'limits'].includes(made.answered.answer.verdict)) throw new Error(`${train} may not leave`);
    const who = async (): Promise<string> => persons.get(driver) ?? '';
    const content = await departureContent(made, made.asked, day, who);
    const left = await say('gate', 'departure', content, 15);
    const { row } = left;
    const laps = 3 + Math.floor(chance() * 5);
    const carried = content.riders.length * laps - Math.floor(chance() * laps);
    // Now and then nobody says how far.
    const distance = chance() < 0.85 ? { distance: `${Math.round(laps * 4) / 10} mile` } : {};
    await say('gate', 'arrival', { departure: row.hash, ...distance, carried }, 20 + 9 * laps);
    return left;
  };

  minutes = 8 * 60;
  for (const device of devices) await say(device, 'author', { person: persons.get(device) }, 1);
  for (const [device, content] of certificates) await certificate(device, content);
  const renewals = certificates.flatMap(([device, content, after]) =>
    after === undefined ? [] : [{ device, content, on: plusDays(`${content['on']}`, after) }],
  );
  const calendar = [...new Set([...runDays, ...renewals.map(({ on }) => on)])].sort();
  for (const date of calendar.filter((d) => d >= FROM && d <= TO)) {
    day = date;
    minutes = date === FROM ? 9 * 60 + 30 : 7 * 60 + Math.floor(chance() * 40);
    for (const { device, content, on } of renewals)
      if (on === date) await certificate(device, { ...content, on });
    if (!runDays.includes(date)) continue;
    const before = pending;
    pending = [];
    for (const one of before) await one();
    const damp = chance() < 0.25;
    await goThrough('track', 'track-walk', LINE);
    await goThrough('shed', 'steam-daily', 'Fenwick');
    for (const car of ['Light car 1', 'Light car 2']) await goThrough('gate', 'car-before-use', car);
    if (damp) {
      await say('track', 'note', { text: 'Rail damp in the cutting: nothing left before it was dry.' });
      minutes = 12 * 60;
    }
    const left = await run('steam', chance() < 0.6 ? 'shed' : 'gate');
    await tell(runDays.indexOf(date), left);
    if (chance() < 0.3) await run('battery', 'gate');
  }
  return storeFile(await look(store), await store.names());
}
