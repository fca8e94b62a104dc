/** A club's records in great number, signed and chained, for timing: small inspections, runs, certificates, notes. */
import type { Kind } from '../papers/record/fields.ts';
import { newKeys } from '../records/hash.ts';
import { bodyIn, type Followed, type Json, type Row, written } from '../records/record.ts';
import type { Newest } from '../records/verify.ts';

/** Version of the program that wrote them. */
export const PROGRAM = '0.0.0';

const DEVICES = 4;
const vehicles = Array.from({ length: 40 }, (_, i) => `Car ${i + 1}`);
const items = ['wheels', 'couplers', 'chains', 'brakes', 'seats', 'floor', 'hoses', 'lamps'];
const HASH = '0'.repeat(64);

const inspection = (i: number): Json => ({
  list: 'Car, before use',
  listHash: HASH,
  when: 'before-use',
  of: vehicles[i % 40],
  looked: items.map((item) => ({ item, ask: `Are the ${item} sound and fast`, result: 'right' })),
});

const departure = (i: number): Json => ({
  outing: `Run ${i}`,
  date: dayOf(i),
  line: 'Line',
  train: 'Train',
  vehicles: [0, 1, 2, 3].map((k) => vehicles[(i + k) % 40]),
  rail: 'dry',
  word: 'limits',
  told: ['GO WITHIN LIMITS'],
  units: 'metric',
  wording: 'uk',
  answer: HASH,
  inputs: HASH,
  paper: {},
  crew: [],
  riders: [],
  done: ['brake-test'],
  notDone: [],
});

const certificate = (i: number): Json => ({
  what: Math.floor(i / 400) % 2 === 0 ? 'chains' : 'brake-test',
  of: vehicles[Math.floor(i / 10) % 40],
  on: dayOf(i),
  interval: 'annually, not to exceed 14 months',
  by: 'An invented inspector',
});

/** 30 records a day. */
const dayOf = (i: number): string =>
  new Date(Date.UTC(2016, 0, 1 + Math.floor(i / 30))).toISOString().slice(0, 10);

/** Of ten: six inspections, two runs, a certificate, a note. */
const said = (i: number): { readonly kind: Kind; readonly content: Json } => {
  const of = i % 10;
  if (of < 6) return { kind: 'inspection', content: inspection(i) };
  if (of < 8) return { kind: 'departure', content: departure(i) };
  return of === 8
    ? { kind: 'certificate', content: certificate(i) }
    : { kind: 'note', content: { text: `note ${i}: rail greasy in the cutting` } };
};

export interface ManyRecords {
  readonly rows: readonly Row[];
  readonly newest: readonly Newest[];
}

export async function manyRecords(count: number): Promise<ManyRecords> {
  const chains = await Promise.all(
    Array.from({ length: DEVICES }, async (_, device) => {
      const keys = await newKeys(false);
      if (!keys) throw new Error('no Ed25519 here');
      const author = { name: keys.name, device: `${device}`, keys };
      const rows: Row[] = [];
      let head: Followed | undefined;
      for (let i = device; i < count; i += DEVICES) {
        const time = `${dayOf(i)}T10:00:00+00:00`;
        const row = await written({ ...said(i), said: time }, author, head, time, PROGRAM);
        head = { ...row, number: (head?.number ?? 0) + 1 };
        rows.push(row);
      }
      return { rows, newest: head ? [{ author: author.name, number: head.number, hash: head.hash }] : [] };
    }),
  );
  const first = chains[0]?.rows[0];
  if (first && !bodyIn(first.text)) throw new Error('records that are none');
  return { rows: chains.flatMap(({ rows }) => rows), newest: chains.flatMap(({ newest }) => newest) };
}
