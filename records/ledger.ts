/** Saying something into a store, and putting two stores together. */
import type { Trouble } from '../papers/problem.ts';
import { checkContent } from '../papers/record/check.ts';
import { laidOut } from './amended.ts';
import { sha256 } from './hash.ts';
import { type Photo, photoFaults, photosNamed } from './photos.ts';
import {
  type Author,
  bodyIn,
  type Entry,
  type Followed,
  type Head,
  type Row,
  type Said,
  written,
} from './record.ts';
import { removalsIn } from './removed.ts';
import type { Store } from './store.ts';
import { byWebCrypto, type Depth, type Newest, newestOf, type Verified, verify } from './verify.ts';

export interface Clock {
  /** Now, as local time with its offset. */
  readonly now: () => string;
  /** Version of the program. */
  readonly program: string;
}

export type Put =
  | { readonly ok: true; readonly entry: Entry }
  | { readonly ok: false; readonly troubles: readonly Trouble[] };

/** Of a fork the longer branch is followed, and of two as long always the same one. */
export const headOf = (newest: readonly Newest[], author: string): Head | undefined =>
  newest
    .filter((one) => one.author === author)
    .reduce<Newest | undefined>(
      (a, b) => (!a || b.number > a.number || (b.number === a.number && b.hash < a.hash) ? b : a),
      undefined,
    );

/**
 * The record that is to be followed, with its signature if this author's key made it: what a stranger put at an author's end is never vouched
 * for by what its author writes behind it, but looked at for itself.
 */
async function followed(
  { row, hash: own, signature: check = byWebCrypto }: Store,
  after: Head | undefined,
  { name, keys }: Author,
): Promise<Followed | undefined> {
  const before = after && keys ? await row(after.hash) : undefined;
  if (!after || before?.signature === undefined) return after;
  const is = own ? own(before.text) : await sha256(before.text);
  const right = is === after.hash && (await check(before.text, before.signature, name)) === 'right';
  return right ? { ...after, signature: before.signature } : after;
}

/** One record more; it is on the disk when this is done. */
export async function put(store: Store, said: Said, author: Author, clock: Clock): Promise<Put> {
  const checked = checkContent(said.kind, said.content);
  if (!checked.ok) return { ok: false, troubles: checked.troubles };
  for (;;) {
    const after = headOf(await store.newest(), author.name);
    const behind = await followed(store, after, author);
    const row = await written(said, author, behind, clock.now(), clock.program);
    const body = bodyIn(row.text);
    if (!body) throw new Error('a record that its own program does not read');
    const at = { author: author.name, number: body.number, hash: row.hash };
    // Another window of the same author was first: what it wrote goes before this.
    if (await store.add(row, at, after)) return { ok: true, entry: { body, row } };
  }
}

/**
 * All of a store, with what is amiss in it.
 * @param program this version's, which held what it wrote against its kind: along the chain that is read when it is asked for
 */
export async function look(store: Store, depth: Depth = 'whole', program?: string): Promise<Verified> {
  const { hash, signature } = store;
  const own = {
    ...(hash ? { hash } : {}),
    ...(signature ? { signature } : {}),
    ...(program === undefined ? {} : { program }),
  };
  // First what is newest, then all: what another writes between is there and not called newest, never called newest and not there.
  const newest = await store.newest();
  const verified = laidOut(await verify(await store.rows(), newest, { depth, ...own }));
  if (depth === 'chain') return verified;
  const photos = await photoFaults(verified.entries, store.photo);
  return photos.length === 0 ? verified : { ...verified, faults: [...verified.faults, ...photos] };
}

export interface Taken {
  readonly added: number;
  readonly there: number;
  /** Those that were removed here, and do not come back. */
  readonly removed: number;
}

/** Records of another store that have been verified, put beside those that are here: sets, whatever the order. */
export async function take(store: Store, rows: readonly Row[]): Promise<Taken> {
  for (;;) {
    const here = await store.rows();
    const known = new Set(here.map(({ hash }) => hash));
    const theirs = new Map(rows.map((row) => [row.hash, row]));
    const unknown = [...theirs.values()].filter(({ hash }) => !known.has(hash));
    const gone = removedFrom(here);
    const fresh = unknown.filter(({ hash }) => !gone.has(hash));
    const counts = { there: theirs.size - unknown.length, removed: unknown.length - fresh.length };
    if (fresh.length === 0) return { added: 0, ...counts };
    const entries = [...here, ...fresh].flatMap((row) => {
      const body = bodyIn(row.text);
      return body ? [{ body, row }] : [];
    });
    // What was newest and is missing stays named: a merge must not make it forgotten.
    const lost = (await store.newest()).filter(({ hash }) => !known.has(hash));
    if (await store.take(fresh, [...newestOf(entries), ...lost], here.length))
      return { added: fresh.length, ...counts };
  }
}

/** Photos of another store, as far as a record that is here names them. */
export async function takePhotos(store: Store, photos: readonly Photo[]): Promise<void> {
  if (photos.length === 0) return;
  const named = photosNamed((await look(store, 'chain')).entries);
  for (const photo of photos)
    if (named.has(photo.hash) && !(await store.photo(photo.hash))) await store.keepPhoto(photo);
}

/** All photos that these records name and that are there. */
export async function photosFor(store: Store, entries: readonly Entry[]): Promise<readonly Photo[]> {
  const found: Photo[] = [];
  for (const hash of photosNamed(entries).keys()) {
    const bytes = await store.photo(hash);
    if (bytes) found.push({ hash, bytes });
  }
  return found;
}

const MARKS = ['"kind":"removal"', '"kind":"retention"'];

/** Most stores never removed anything: then none of their texts is read for it. */
const removedFrom = (rows: readonly Row[]): ReadonlyMap<string, unknown> =>
  removalsIn(
    rows.flatMap((row) => {
      const body = MARKS.some((mark) => row.text.includes(mark)) ? bodyIn(row.text) : undefined;
      return body ? [{ body, row }] : [];
    }),
  ).gone;
