/**
 * Whether a store is as its authors wrote it: every record by itself, and that none is missing between two. Each fault
 * names the record. What no look at one store can see is said in docs/records.md: the newest records of an author, cut
 * off together with what the store says of how many there are.
 */
import { checkContent } from '../papers/record/check.ts';
import { checkSignature, sha256 } from './hash.ts';
import { type Body, bodyIn, type Entry, type Head, isUnsigned, type Row } from './record.ts';
import { removalsIn } from './removed.ts';

export type Fault =
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
}

/** The newest records of each author by what a store says of itself: what it has is held against it. */
export interface Newest extends Head {
  readonly author: string;
}

/** So many at once: the platform checks them beside each other. */
const BATCH = 256;

interface Looked {
  readonly fault?: Fault;
  readonly entry?: Entry;
  readonly unsigned?: true;
  readonly unchecked?: true;
}

async function look(row: Row, i: number): Promise<Looked> {
  const { text, hash, signature } = row;
  const body = bodyIn(text);
  if (!body || (await sha256(text)) !== hash)
    return { fault: { what: 'altered', row: i, hash, ...(body ? { body } : {}) } };
  const at = { row: i, hash, body };
  const entry = { body, row };
  if (!checkContent(body.kind, body.content).ok) return { fault: { what: 'content', ...at }, entry };
  if (isUnsigned(body.author))
    return signature === undefined
      ? { entry, unsigned: true }
      : { fault: { what: 'signature', ...at }, entry };
  if (signature === undefined) return { fault: { what: 'signature', ...at }, entry };
  const is = await checkSignature(text, signature, body.author);
  if (is === 'wrong') return { fault: { what: 'signature', ...at }, entry };
  return is === 'unable' ? { entry, unchecked: true } : { entry };
}

/** @param newest what the store says of its authors' newest records; undefined: it says nothing */
export async function verify(rows: readonly Row[], newest: readonly Newest[] = []): Promise<Verified> {
  const looked: Looked[] = [];
  for (let from = 0; from < rows.length; from += BATCH)
    looked.push(...(await Promise.all(rows.slice(from, from + BATCH).map((row, i) => look(row, from + i)))));
  const entries = looked.flatMap(({ entry }) => (entry ? [entry] : []));
  const faults = looked.flatMap(({ fault }) => (fault ? [fault] : []));
  return {
    entries: inOrder(entries),
    faults: [
      ...faults,
      ...links(entries, rows),
      ...ofRemovals(entries, rows),
      ...ofNewest(entries, newest, rows),
    ],
    forks: forksIn(entries),
    unsigned: looked.filter(({ unsigned }) => unsigned).length,
    unchecked: looked.filter(({ unchecked }) => unchecked).length,
  };
}

/** By the time they were put by; of the same moment by author, number and hash: one order for one set. */
export const inOrder = (entries: readonly Entry[]): Entry[] => {
  const keyed = entries.map((entry) => ({ entry, at: Date.parse(entry.body.stored) }));
  keyed.sort(
    (a, b) =>
      a.at - b.at ||
      compare(a.entry.body.author, b.entry.body.author) ||
      a.entry.body.number - b.entry.body.number ||
      compare(a.entry.row.hash, b.entry.row.hash),
  );
  return keyed.map(({ entry }) => entry);
};

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

type Linked = Pick<Body, 'author' | 'number'>;

/** What is there, and what was removed on purpose: a chain goes through both. */
const linked = (entries: readonly Entry[]): ReadonlyMap<string, Linked> =>
  new Map<string, Linked>([
    ...removalsIn(entries).gone,
    ...entries.map(({ row, body }) => [row.hash, body] as const),
  ]);

/** Removals that no rule lets be, and removed records that do not stand in their author's chain. */
function ofRemovals(entries: readonly Entry[], rows: readonly Row[]): Fault[] {
  const { gone, by, wrong } = removalsIn(entries);
  if (gone.size + wrong.length === 0) return [];
  const there = linked(entries);
  const rowOf = new Map(rows.map(({ hash }, i) => [hash, i]));
  const misplaced = new Set(wrong);
  const missing: Fault[] = [];
  for (const { hash, previous, author, number } of gone.values()) {
    const before = previous === undefined ? undefined : there.get(previous);
    if (previous !== undefined && !before && !rowOf.has(previous))
      missing.push({ what: 'missing', hash: previous, author, number: number - 1, namedBy: hash });
    const follows = before ? before.author === author && before.number === number - 1 : number === 1;
    const teller = by.get(hash);
    if (teller && !follows && (before || previous === undefined)) misplaced.add(teller);
  }
  const told = [...misplaced].map(({ row, body }): Fault => {
    return { what: 'removal', row: rowOf.get(row.hash) ?? 0, hash: row.hash, body };
  });
  return [...told, ...missing];
}

/** What each names is there, and is the author's own. */
function links(entries: readonly Entry[], rows: readonly Row[]): Fault[] {
  const there = linked(entries);
  const rowOf = new Map(rows.map(({ hash }, i) => [hash, i]));
  const faults: Fault[] = [];
  for (const { body, row } of entries) {
    const { previous, amends, author, number } = body;
    const before = previous === undefined ? undefined : there.get(previous);
    // One that is there and was altered has been told already.
    if (previous !== undefined && !before && !rowOf.has(previous))
      faults.push({ what: 'missing', hash: previous, author, number: number - 1, namedBy: row.hash });
    else if (before && (before.author !== author || before.number !== number - 1))
      faults.push({ what: 'order', row: rowOf.get(row.hash) ?? 0, hash: row.hash, body });
    if (amends !== undefined && !rowOf.has(amends) && !there.has(amends))
      faults.push({ what: 'missing', hash: amends, author: '', namedBy: row.hash });
  }
  return faults;
}

function ofNewest(entries: readonly Entry[], newest: readonly Newest[], rows: readonly Row[]): Fault[] {
  const rowsThere = new Set(rows.map(({ hash }) => hash));
  const there = linked(entries);
  return newest.flatMap((named): Fault[] => {
    const body = there.get(named.hash);
    if (!body) return rowsThere.has(named.hash) ? [] : [{ what: 'missing', ...named, namedBy: '' }];
    return body.author === named.author && body.number === named.number ? [] : [{ what: 'newest', ...named }];
  });
}

function forksIn(entries: readonly Entry[]): Fork[] {
  const after = new Map<string, Entry[]>();
  for (const entry of entries) {
    const key = `${entry.body.author} ${entry.body.previous ?? ''}`;
    after.set(key, [...(after.get(key) ?? []), entry]);
  }
  return [...after.values()]
    .filter((those) => those.length > 1)
    .map((those) => ({
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
