/** Saying something into a store, and putting two stores together. */
import type { Trouble } from '../papers/problem.ts';
import { checkContent } from '../papers/record/check.ts';
import { laidOut } from './amended.ts';
import { type Photo, photoFaults, photosNamed } from './photos.ts';
import { type Author, bodyIn, type Entry, type Head, type Row, type Said, written } from './record.ts';
import { removalsIn } from './removed.ts';
import type { Store } from './store.ts';
import { type Depth, type Newest, newestOf, type Verified, verify } from './verify.ts';

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

/** One record more; it is on the disk when this is done. */
export async function put(store: Store, said: Said, author: Author, clock: Clock): Promise<Put> {
  const checked = checkContent(said.kind, said.content);
  if (!checked.ok) return { ok: false, troubles: checked.troubles };
  for (;;) {
    const after = headOf(await store.newest(), author.name);
    const row = await written(said, author, after, clock.now(), clock.program);
    const body = bodyIn(row.text);
    if (!body) throw new Error('a record that its own program does not read');
    const at = { author: author.name, number: body.number, hash: row.hash };
    // Another window of the same author was first: what it wrote goes before this.
    if (await store.add(row, at, after)) return { ok: true, entry: { body, row } };
  }
}

/** All of a store, with what is amiss in it. @param depth `chain`: as much as shows that every text is its author's */
export async function look(store: Store, depth: Depth = 'whole'): Promise<Verified> {
  const { hash, signature } = store;
  const own = { ...(hash ? { hash } : {}), ...(signature ? { signature } : {}) };
  const verified = laidOut(await verify(await store.rows(), await store.newest(), { depth, ...own }));
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
