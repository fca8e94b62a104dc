/** Records of a club: its file and its SQLite store changed by chance, and records that say other things than any page lets them. */
import { createPrivateKey, createPublicKey } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { dueCalendar } from '../../desk/due/calendar.ts';
import { recorded, withShown } from '../../desk/due/shown.ts';
import { evidencePack } from '../../desk/evidence/pack.ts';
import { serviceHead, tellCarried, tellService, tellTrip } from '../../desk/leave/tell.ts';
import type { Kind } from '../../papers/record/fields.ts';
import { incidentKinds } from '../../papers/record/incident-fields.ts';
import { about } from '../../records/about.ts';
import { standing } from '../../records/amended.ts';
import { dueOn } from '../../records/due.ts';
import { ended, rules } from '../../records/ended.ts';
import { readStoreFile, storeFile } from '../../records/file.ts';
import { incidents, openMeasures } from '../../records/incidents.ts';
import { look, take } from '../../records/ledger.ts';
import { personOf } from '../../records/names.ts';
import { patterns } from '../../records/patterns.ts';
import { type Author, bodyIn, type Entry, type Json, type Row, written } from '../../records/record.ts';
import { carried, service, trips } from '../../records/service.ts';
import type { Named, Store } from '../../records/store.ts';
import { memoryStore } from '../../records/stores/memory.ts';
import { NoStore, openSqlite } from '../../records/stores/sqlite.ts';
import { tellDue } from '../../words/records/due.ts';
import { tellEnded, tellRules } from '../../words/records/kept.ts';
import { tellGround, tellLook } from '../../words/records/patterns.ts';
import { tellStanding } from '../../words/records/record.ts';
import { tellFault, tellFork, tellWhole } from '../../words/records/verified.ts';
import { clockFrom } from '../support/club-records.ts';
import { type Chance, changedJson, changedText } from './mutate.ts';
import { papers } from './papers.ts';
import { poor } from './rooms.ts';
import type { Outcome } from './targets.ts';

const clock = clockFrom();

/** An author whose key is the same each time, so that an input can be had again. */
async function sameAuthor(): Promise<Author> {
  const pkcs8 = Buffer.from(`302e020100300506032b657004220420${'07'.repeat(32)}`, 'hex');
  const jwk = createPublicKey(createPrivateKey({ key: pkcs8, format: 'der', type: 'pkcs8' })).export({
    format: 'jwk',
  });
  const name = Buffer.from(String(jwk.x), 'base64url').toString('hex');
  const sign = await crypto.subtle.importKey('pkcs8', pkcs8, { name: 'Ed25519' }, false, ['sign']);
  return { name, device: 'shed', keys: { name, sign } };
}

const [who, whose] = [await sameAuthor(), 'ab'.repeat(32)];
const names: readonly Named[] = [{ person: whose, salt: '0', name: 'An Invented Person, “ä 🚂”' }];
const named = [{ ...names[0], person: await personOf(names[0].name, names[0].salt) }];

interface Saying {
  readonly kind: Kind;
  readonly content: Json;
}

/** Day of the records, and one on which the note may go. */
const [day, later] = ['2026-05-01', '2026-06-30'];

/** One of each kind from the year of the examples: its first, and what it closes. */
function fromTheYear(): Saying[] {
  const year = readFileSync(new URL('../../examples/club/year.jsonl', import.meta.url), 'utf8').split('\n');
  const bodies = year.slice(1, -1).flatMap((line) => JSON.parse(line).body ?? []) as Saying[];
  const first = (kind: Kind): Saying => bodies.find((body) => body.kind === kind) as Saying;
  return (['certificate', 'inspection', 'departure', 'note'] as const).map(first);
}

/** By what stands before it in the store: the hash of the newest record of that kind. */
type After = (of: Partial<Record<Kind, string>>) => Saying;

const saying: readonly After[] = [
  () => ({ kind: 'author', content: { person: whose } }),
  ...fromTheYear().map((said) => () => said),
  ({ departure }) => ({
    kind: 'arrival',
    content: { departure, distance: '2.5 mile', carried: 40, events: 'rain' },
  }),
  ({ inspection }) => ({ kind: 'mended', content: { inspection, item: 'x', what: 'packed' } }),
  ...(['on', 'break', 'back', 'off', 'on'] as const).map(
    (what) => (): Saying => ({ kind: 'turn', content: { person: whose, what } }),
  ),
  ({ departure }) => ({
    kind: 'incident',
    content: {
      what: 'derailment',
      facts: 'one wheel off',
      line: 'Larkfield Hollow',
      at: '420 ft',
      vehicle: 'Light car 1',
      axle: 2,
      side: 'left',
      speed: '4 mph',
      rail: 'dry',
      hurt: 'nobody',
      departure,
      saw: [whose],
    },
  }),
  ({ incident }) => ({
    kind: 'measure',
    content: { incident, what: 'pack the joint', by: '2026-06-01', person: whose },
  }),
  ({ measure }) => ({ kind: 'measured', content: { measure, what: 'packed' } }),
  ...(['2 mph', undefined] as const).map(
    (speed): After =>
      ({ incident }) => ({
        kind: 'restriction',
        content: {
          line: 'Larkfield Hollow',
          from: '400 ft',
          to: '440 ft',
          ...(speed === undefined ? {} : { speed }),
          why: 'soft bank',
          because: incident,
        },
      }),
  ),
  ({ restriction }) => ({ kind: 'lifted', content: { restriction, why: 'packed and tried', person: whose } }),
  () => ({ kind: 'retention', content: { kind: 'note', keep: '30 days', source: 'an invented rule' } }),
  ({ note, departure, retention }) => ({
    kind: 'removal',
    content: {
      removed: [
        { hash: note, author: who.name, number: 5, previous: departure, kind: 'note', day, under: retention },
      ],
    },
  }),
];

/** Rows as one author wrote them, some of them otherwise: no page would have written those, and a program of another's may. */
async function rowsOf(
  change: (said: Saying, i: number) => unknown,
  anew: Chance | undefined,
): Promise<Row[]> {
  const newest: Partial<Record<Kind, string>> = {};
  const rows: Row[] = [];
  for (const [i, after] of saying.entries()) {
    const said = after(newest);
    const content = change(said, i) as Json;
    const before = rows.at(-1);
    const amends = anew && anew.share() < 0.1 ? anew.one([before, rows[0]])?.hash : undefined;
    const row = await written(
      { ...said, content, said: clock.now(), ...(amends === undefined ? {} : { amends }) },
      who,
      before && { number: i, hash: before.hash },
      said.kind === 'removal' ? `${later}T08:00:00+00:00` : clock.now(),
      '0.0.0',
    );
    rows.push(row);
    newest[said.kind] = row.hash;
  }
  return rows;
}

const sound = await rowsOf(({ content }) => content, undefined);
const newestOf = (rows: readonly Row[]) =>
  rows.slice(-1).map(({ hash }) => ({ author: who.name, hash, number: rows.length }));
const entriesOf = (rows: readonly Row[]): Entry[] =>
  rows.flatMap((row) => {
    const body = bodyIn(row.text);
    return body ? [{ body, row }] : [];
  });
const file = await storeFile({ entries: entriesOf(sound) }, named);

const speech = { system: 'imperial', wording: 'us' } as const;
const voice = { system: 'imperial', wording: 'us' } as const;
const today = '2026-05-31';

/** What every page and command reads from records. */
async function readings(store: Store): Promise<string | undefined> {
  const { entries } = await look(store, 'chain');
  const ran = trips(entries);
  const due = dueOn(entries, today);
  const words = [
    ...standing(entries).flatMap((one) => Object.values(tellStanding(one, entries, names))),
    ...due.flatMap((item) => Object.values(tellDue(item, names))),
    ...ran.map(tellTrip),
    ...serviceHead,
    ...service(ran).flatMap((one) => tellService(one, speech)),
    tellCarried(carried(ran)),
    ...tellRules(rules(entries)),
    ...tellEnded(ended(entries, today)),
    dueCalendar('x', due, names),
    ...incidents(entries).flatMap((one) => JSON.stringify(one)),
    ...openMeasures(incidents(entries)).flatMap((one) => JSON.stringify(one)),
    JSON.stringify(about([names[0]], entries)),
    ...incidentKinds.slice(0, 2).flatMap((kind) => {
      const found = patterns(entries, kind, { within: 30, firstDays: 7 });
      return [
        ...tellGround(found, '30 m', 7),
        ...found.looks.flatMap((one) => Object.values(tellLook(one, found.looked, voice))),
      ];
    }),
  ];
  return poor(words.map(String), (await store.rows()).map(({ text }) => text).join());
}

/** What is recorded goes into an outing's paper, and into a pack for an inspector. */
async function carriedOver(store: Store): Promise<string | undefined> {
  const looked = await look(store);
  const [paper] = papers;
  withShown(paper, recorded(looked.entries, names, today));
  const pack = await evidencePack({
    looked,
    names,
    wanted: { from: undefined, to: undefined, of: undefined },
    speech,
    made: { at: clock.now(), program: '0.0.0' },
  });
  return poor([JSON.stringify(pack.sections), JSON.stringify(pack.cover)], pack.records);
}

/** Records of another program: sound by their hashes, and of any content. */
export async function foreign(chance: Chance): Promise<Outcome> {
  const some = new Set(Array.from({ length: 1 + chance.index(3) }, () => chance.index(saying.length)));
  const rows = await rowsOf(
    // As a file can hold it: JSON has no number that is none.
    ({ content }, i) => (some.has(i) ? JSON.parse(JSON.stringify(changedJson(content, chance))) : content),
    chance.share() < 0.3 ? chance : undefined,
  );
  const store = memoryStore();
  await store.take(rows, newestOf(rows), 0);
  const crash = (await readings(store)) ?? (chance.share() < 0.2 ? await carriedOver(store) : undefined);
  const { faults } = await look(store);
  return { end: faults.length > 0 ? 'refused' : 'accepted', ...(crash === undefined ? {} : { crash }) };
}

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A file of records: what is otherwise is found, told in words, and brings nothing. */
export async function recordsFile(chance: Chance): Promise<Outcome> {
  const lines = file.split('\n');
  const at = chance.index(lines.length - 1);
  const changed =
    chance.share() < 0.5
      ? changedText(file, chance)
      : lines
          .map((line, i) => (i === at ? JSON.stringify(changedJson(JSON.parse(line), chance)) : line))
          .join('\n');
  const read = await readStoreFile(bytes(changed));
  const same = new TextDecoder().decode(bytes(changed)) === file;
  if (!same && read.faults.length === 0)
    return { end: 'accepted', unsafe: 'a changed file is taken for sound' };
  const known = { ...read.verified, names: read.names };
  const words = [
    ...read.faults.map((fault) => tellFault(fault, known, (row) => row + 2)),
    ...read.verified.forks.map((fork) => tellFork(fork, known)),
    ...tellWhole(read.verified, read.faults.length),
  ];
  const odd = poor(words, changed);
  const here = memoryStore();
  await take(
    here,
    read.verified.entries.map(({ row }) => row),
  );
  const altered = (await look(here)).faults.some(({ what }) => what === 'altered');
  return {
    end: same ? 'accepted' : 'refused',
    ...(odd === undefined ? {} : { crash: odd }),
    ...(altered ? { unsafe: 'an altered record was taken' } : {}),
  };
}

let sqlite: Promise<Buffer> | undefined;
const folder = mkdtempSync(join(tmpdir(), 'attacked-'));
process.once('exit', () => rmSync(folder, { recursive: true, force: true }));

async function sqliteBytes(): Promise<Buffer> {
  const path = join(folder, 'sound.records');
  const store = await openSqlite(path, true);
  await store.take(sound, newestOf(sound), 0);
  for (const one of names) await store.name(one);
  store.close();
  return readFileSync(path);
}

/** One to four runs of bytes otherwise, or an end cut off. */
function changedBytes(of: Buffer, chance: Chance): Buffer {
  const now = Buffer.from(of);
  for (let left = 1 + chance.index(4); left > 0; left--) {
    const at = chance.share() < 0.2 ? chance.index(100) : chance.index(now.length);
    for (let i = at; i < Math.min(now.length, at + 1 + chance.index(12)); i++)
      now[i] = chance.one([0, 255, now[i] ^ (1 << chance.index(8)), chance.index(256)]);
  }
  return chance.share() < 0.05 ? now.subarray(0, chance.index(now.length)) : now;
}

const wordOf = ({ row, body }: Entry): string => `${row.hash} ${row.text} ${body.number}`;
const truth = new Set(entriesOf(sound).map(wordOf));

/** A store on the disk, of which some bytes are otherwise: a word on it, and no record that nobody wrote. */
export async function sqliteStore(chance: Chance): Promise<Outcome> {
  sqlite ??= sqliteBytes();
  const path = join(folder, 'changed.records');
  for (const end of ['', '-journal', '-wal', '-shm']) rmSync(path + end, { force: true });
  writeFileSync(path, changedBytes(await sqlite, chance));
  try {
    const store = await openSqlite(path);
    try {
      const { entries, faults } = await look(store, 'chain');
      await store.names();
      const odd = entries.find((entry) => !truth.has(wordOf(entry)));
      if (odd)
        return { end: 'accepted', unsafe: `a record that nobody wrote: ${odd.row.text.slice(0, 200)}` };
      return { end: faults.length > 0 ? 'refused' : 'accepted' };
    } finally {
      store.close();
    }
  } catch (fault) {
    if (fault instanceof NoStore && fault.message !== '') return { end: 'refused' };
    throw fault;
  }
}
