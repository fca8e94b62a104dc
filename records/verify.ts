/**
 * Whether a store is as its authors wrote it: every record by itself, and that none is missing between two. Each fault
 * names the record. What no look at one store can see is said in docs/records.md: the newest records of an author, cut
 * off together with what the store says of how many there are.
 */
import { checkContent } from '../papers/record/check.ts';
import { plainlyOf } from '../papers/record/quick.ts';
import { bytesOf } from './canonical.ts';
import { checkSignature, type Signature, sha256 } from './hash.ts';
import type { PhotoFault } from './photos.ts';
import {
  type Body,
  bodyIn,
  bodyUnread,
  type Entry,
  type Head,
  isUnsigned,
  laidBy,
  type Row,
} from './record.ts';
import { type Removals, removalsIn } from './removed.ts';
import { fitsUnbroken, type Unbroken, unbroken, vouches } from './unbroken.ts';

export type Fault =
  | PhotoFault
  /** Its text is not what its hash is of, or is no record's text. */
  | { readonly what: 'altered'; readonly row: number; readonly hash: string; readonly body?: Body }
  /** The author's key did not sign it, or nobody did. */
  | { readonly what: 'signature'; readonly row: number; readonly hash: string; readonly body: Body }
  /** Its content is none of its kind. */
  | { readonly what: 'content'; readonly row: number; readonly hash: string; readonly body: Body }
  /** Named by another record, or by the store, and not there. */
  | {
      readonly what: 'missing';
      readonly hash: string;
      readonly author: string;
      readonly number?: number;
      readonly namedBy: string;
    }
  /** The store calls it an author's newest, and it is another's, or not of that number. */
  | { readonly what: 'newest'; readonly hash: string; readonly author: string; readonly number: number }
  /** It removes what no rule lets it remove, or what never stood where it says. */
  | { readonly what: 'removal'; readonly row: number; readonly hash: string; readonly body: Body }
  /** Its number is not one more than that of the record before it, or that one is another author's. */
  | { readonly what: 'order'; readonly row: number; readonly hash: string; readonly body: Body };

/** Two or more records of one author that follow the same one: a device whose store was copied or put back. */
export interface Fork {
  readonly author: string;
  /** Hash of the record that they follow; empty: each is a first one. */
  readonly after: string;
  readonly hashes: readonly string[];
}

export interface Verified {
  /** Those that are as they were written, oldest first. */
  readonly entries: readonly Entry[];
  readonly faults: readonly Fault[];
  readonly forks: readonly Fork[];
  /** Records that bear no signature because their author has no key. */
  readonly unsigned: number;
  /** Records whose signature this platform cannot check. */
  readonly unchecked: number;
  /** Records whose signature another one vouches for: it was not looked at by itself. */
  readonly vouched: number;
}

/** The newest records of each author by what a store says of itself: what it has is held against it. */
export interface Newest extends Head {
  readonly author: string;
}

/**
 * `each`: every record by itself, its signature too. `whole`: every record, and the signatures that no sound record vouches for: one that
 * follows names the text and the signature that it found right, and so does that before it, so that a good signature on an author's last
 * record shows that no text and no signature before it is another than its author's. `chain`: the same, and what this same
 * program held against its kind when it wrote it is not held against it again.
 */
export type Depth = 'each' | 'whole' | 'chain';

export interface Looking {
  readonly depth?: Depth;
  /** SHA-256 at once, where the platform can; else each is waited for. */
  readonly hash?: (text: string) => string;
  /** A signature by the platform's own way, where that is quicker. */
  readonly signature?: SignatureCheck;
  /** This version's, of which contents need no look along the chain. */
  readonly program?: string;
}

export type SignatureCheck = (text: string, signature: string, author: string) => Promise<Signature>;

export const byWebCrypto: SignatureCheck = (text, signature, author) =>
  checkSignature(bytesOf(text), signature, author);

/** What is known of the rows, one by one. */
interface Looked {
  /** By row; none where the text is no record's or another than its hash is of. */
  readonly entries: (Entry | undefined)[];
  /** By row. */
  readonly faults: Map<number, Fault>;
  /** Rows whose signature is still to be checked, if nothing vouches for it. */
  readonly later: number[];
  unsigned: number;
  /** What many say alike, as one text. */
  readonly alike: (text: string) => string;
}

type Depths = Pick<Looking, 'depth' | 'program'>;

/** One record, but for its signature, into what is known. @param is the hash of its text */
function lookAt(row: Row, i: number, is: string, { depth, program }: Depths, known: Looked): void {
  const { hash, signature } = row;
  const unread =
    depth === 'chain' && program !== undefined && is === hash
      ? bodyUnread(row, program, known.alike)
      : undefined;
  const body = unread ?? (hash === '' ? undefined : bodyIn(row.text, depth !== 'chain'));
  // A line of a file that is none has no hash.
  if (!body || is !== hash) {
    known.faults.set(i, { what: 'altered', row: i, hash, ...(body ? { body } : {}) });
    return;
  }
  known.entries[i] = { body: unread ?? laidBy(body, row, known.alike), row };
  const signs = !isUnsigned(body.author);
  if (!unread && !plainlyOf(body.kind, body.content) && !checkContent(body.kind, body.content).ok)
    known.faults.set(i, { what: 'content', row: i, hash, body });
  else if (signs !== (signature !== undefined))
    known.faults.set(i, { what: 'signature', row: i, hash, body });
  else if (signs) known.later.push(i);
  else known.unsigned++;
}

function alike(): (text: string) => string {
  const known = new Map<string, string>();
  return (text) => {
    const one = known.get(text);
    if (one === undefined) known.set(text, text);
    return one ?? text;
  };
}

/** So many at once: the platform works at them beside each other. */
const BATCH = 256;

/** In order, so many at a time. */
async function together<T, U>(all: readonly T[], work: (one: T) => Promise<U>): Promise<U[]> {
  const done: U[] = [];
  for (let from = 0; from < all.length; from += BATCH)
    for (const one of await Promise.all(all.slice(from, from + BATCH).map(work))) done.push(one);
  return done;
}

/** Every record but for its signature. */
async function lookAtAll(rows: readonly Row[], { hash, ...how }: Looking): Promise<Looked> {
  const known: Looked = {
    entries: new Array(rows.length).fill(undefined),
    faults: new Map(),
    later: [],
    unsigned: 0,
    alike: alike(),
  };
  if (hash) for (let i = 0; i < rows.length; i++) lookAt(rows[i], i, hash(rows[i].text), how, known);
  else {
    const hashes = await together(rows, ({ text }) => sha256(text));
    for (let i = 0; i < rows.length; i++) lookAt(rows[i], i, hashes[i], how, known);
  }
  return known;
}

/** What the signatures of these rows are worth. */
interface Signed {
  readonly wrong: readonly Fault[];
  /** How many this platform cannot check. */
  readonly unchecked: number;
  readonly vouched: number;
}

async function signaturesOf(
  asked: readonly number[],
  { entries, later }: Looked,
  check: SignatureCheck,
): Promise<Signed> {
  const found = await together(asked, async (i) => {
    const { body, row } = entries[i] as Entry;
    return { i, body, row, is: await check(row.text, row.signature ?? '', body.author) };
  });
  return {
    wrong: found.flatMap(({ i, body, row: { hash }, is }) =>
      is === 'wrong' ? [{ what: 'signature', row: i, hash, body } as const] : [],
    ),
    unchecked: found.filter(({ is }) => is === 'unable').length,
    vouched: later.length - asked.length,
  };
}

/** By place, 1: a record in which nothing else is amiss vouches for its signature. */
function vouchedBy({ entries, faults }: Looked): Uint8Array {
  const vouched = new Uint8Array(entries.length);
  const places = new Map(entries.flatMap((entry, i) => (entry ? [[entry.row.hash, i]] : [])));
  for (const [i, entry] of entries.entries()) {
    const before =
      entry?.body.previous !== undefined && !faults.has(i) ? places.get(entry.body.previous) : undefined;
    if (entry && before !== undefined && vouches(entry, entries[before] as Entry)) vouched[before] = 1;
  }
  return vouched;
}

/** A voucher is worth what its own end is worth: where one of the signatures that were looked at is not right, every one is. */
async function allSigned(
  looked: Looked,
  chains: Unbroken | undefined,
  { depth = 'whole', signature: check = byWebCrypto }: Looking,
): Promise<Signed> {
  const { later } = looked;
  const vouched = depth === 'each' ? undefined : (chains?.vouched ?? vouchedBy(looked));
  const ends = vouched ? later.filter((i) => vouched[i] === 0) : later;
  const signed = await signaturesOf(ends, looked, check);
  const held = signed.wrong.length === 0 && signed.unchecked === 0;
  return held || ends.length === later.length ? signed : signaturesOf(later, looked, check);
}

/** @param newest what the store says of its authors' newest records; undefined: it says nothing */
export async function verify(
  rows: readonly Row[],
  newest: readonly Newest[] = [],
  how: Looking = {},
): Promise<Verified> {
  const looked = await lookAtAll(rows, { depth: 'whole', ...how });
  // Where nothing is amiss each row has its entry, at its place.
  const sound = looked.faults.size === 0;
  const entries = sound ? (looked.entries as Entry[]) : looked.entries.filter((entry) => entry !== undefined);
  const chains = sound ? unbroken(entries) : undefined;
  const { wrong, unchecked, vouched } = await allSigned(looked, chains, how);
  for (const fault of wrong) if ('row' in fault) looked.faults.set(fault.row, fault);
  const faults = [...looked.faults].sort(([a], [b]) => a - b).map(([, fault]) => fault);
  const counts = { unsigned: looked.unsigned, unchecked, vouched };
  // A removal is held against its rule and its place in the chain, link by link.
  const removes = () => entries.some(({ body }) => body.kind === 'removal');
  if (chains && faults.length === 0 && !removes() && fitsUnbroken(chains, entries, newest))
    return {
      entries: inOrder(Array.from(chains.order, (i) => entries[i])),
      faults: [],
      forks: [],
      ...counts,
    };
  const those = rowsBy(rows);
  // One that nobody's key signed, or that says what its kind does not, counts for nothing.
  const right = looked.entries.filter((entry, i) => entry !== undefined && !looked.faults.has(i)) as Entry[];
  const removals = removalsIn(right);
  const there = linked(entries, removals);
  return {
    entries: inOrder(right),
    faults: [
      ...faults,
      ...links(entries, there, those),
      ...ofRemovals(removals, there, those),
      ...ofNewest(there, newest, those),
    ],
    forks: forksIn(entries),
    ...counts,
  };
}

/** By the time they were put by; of the same moment by author, number and hash: one order for one set. */
export const inOrder = (entries: readonly Entry[]): Entry[] => {
  let [before, time] = ['', 0];
  const at = entries.map(({ body: { stored } }) => {
    // What was put by in one moment stands together, nearly.
    if (stored !== before) [before, time] = [stored, Date.parse(stored)];
    return time;
  });
  // A list of numbers is sorted by the runs that are in it already: a chain is one.
  const order = Array.from(entries.keys());
  order.sort((a, b) => at[a] - at[b] || ofOneMoment(entries[a], entries[b]));
  return order.map((i) => entries[i]);
};

const ofOneMoment = (a: Entry, b: Entry): number =>
  compare(a.body.author, b.body.author) || a.body.number - b.body.number || compare(a.row.hash, b.row.hash);

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Where the row of a hash stands; looked for only where something is amiss. */
interface Rows {
  readonly at: (hash: string) => number | undefined;
}

function rowsBy(rows: readonly Row[]): Rows {
  let places: ReadonlyMap<string, number> | undefined;
  return {
    at: (hash) => {
      places ??= new Map(rows.map((row, i) => [row.hash, i]));
      return places.get(hash);
    },
  };
}

type Linked = Pick<Body, 'author' | 'number'>;

/** What is there, and what was removed on purpose: a chain goes through both. */
type Chain = ReadonlyMap<string, Linked>;

function linked(entries: readonly Entry[], { gone }: Removals): Chain {
  const there = new Map<string, Linked>(gone);
  for (const { row, body } of entries) there.set(row.hash, body);
  return there;
}

/** Removals that no rule lets be, and removed records that do not stand in their author's chain. */
function ofRemovals({ gone, by, wrong }: Removals, there: Chain, rows: Rows): Fault[] {
  const misplaced = new Set(wrong);
  const missing: Fault[] = [];
  for (const { hash, previous, author, number } of gone.values()) {
    const before = previous === undefined ? undefined : there.get(previous);
    if (previous !== undefined && !before && rows.at(previous) === undefined)
      missing.push({ what: 'missing', hash: previous, author, number: number - 1, namedBy: hash });
    const follows = before ? before.author === author && before.number === number - 1 : number === 1;
    const teller = by.get(hash);
    if (teller && !follows && (before || previous === undefined)) misplaced.add(teller);
  }
  const told = [...misplaced].map(({ row, body }): Fault => {
    return { what: 'removal', row: rows.at(row.hash) ?? 0, hash: row.hash, body };
  });
  return [...told, ...missing];
}

/** What each names is there or was removed on purpose, and is the author's own. */
function links(entries: readonly Entry[], there: Chain, rows: Rows): Fault[] {
  const faults: Fault[] = [];
  for (const { body, row } of entries) {
    const { previous, amends, author, number } = body;
    const before = previous === undefined ? undefined : there.get(previous);
    // One that is there and was altered has been told already.
    if (previous !== undefined && !before && rows.at(previous) === undefined)
      faults.push({ what: 'missing', hash: previous, author, number: number - 1, namedBy: row.hash });
    else if (before && (before.author !== author || before.number !== number - 1))
      faults.push({ what: 'order', row: rows.at(row.hash) ?? 0, hash: row.hash, body });
    if (amends !== undefined && !there.has(amends) && rows.at(amends) === undefined)
      faults.push({ what: 'missing', hash: amends, author: '', namedBy: row.hash });
  }
  return faults;
}

function ofNewest(there: Chain, newest: readonly Newest[], rows: Rows): Fault[] {
  return newest.flatMap((one): Fault[] => {
    const body = there.get(one.hash);
    if (!body) return rows.at(one.hash) === undefined ? [{ what: 'missing', ...one, namedBy: '' }] : [];
    return body.author === one.author && body.number === one.number ? [] : [{ what: 'newest', ...one }];
  });
}

function forksIn(entries: readonly Entry[]): Fork[] {
  const after = new Map<string, Entry[]>();
  const seen = new Map<string, Entry>();
  for (const entry of entries) {
    // A first record follows nothing, of its author.
    const key = entry.body.previous ?? `${entry.body.author} `;
    const other = seen.get(key);
    if (!other) seen.set(key, entry);
    else if (other.body.author === entry.body.author) after.set(key, [...(after.get(key) ?? [other]), entry]);
  }
  return [...after.values()].map((those) => ({
    author: those[0].body.author,
    after: those[0].body.previous ?? '',
    hashes: those.map(({ row }) => row.hash).sort(),
  }));
}

/** The newest of each branch of each author: of the records that no other follows. */
export function newestOf(entries: readonly Entry[]): Newest[] {
  const { gone } = removalsIn(entries);
  const followed = new Set(
    [...entries.map(({ body }) => body), ...gone.values()].flatMap(({ previous }) => previous ?? []),
  );
  const here = new Set(entries.map(({ row }) => row.hash));
  const links = [
    ...entries.map(({ body: { author, number }, row: { hash } }) => ({ author, number, hash })),
    ...[...gone.values()]
      .filter(({ hash }) => !here.has(hash))
      .map(({ author, number, hash }) => ({ author, number, hash })),
  ];
  return links.filter(({ hash }) => !followed.has(hash));
}
