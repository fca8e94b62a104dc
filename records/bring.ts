/**
 * A file of another device's records, brought in: all of it or nothing. Whoever's key is not known here is asked for
 * first, for a record that lifts a closure or shows a certificate counts whoever signed it.
 */
import type { FileFault, StoreFile } from './file.ts';
import { type Taken, take, takePhotos } from './ledger.ts';
import { type Entry, isUnsigned, UNSIGNED } from './record.ts';
import type { Store } from './store.ts';

/** An author whom nothing here vouches for, and what of theirs would come in. */
export interface Stranger {
  readonly author: string;
  readonly fresh: readonly Entry[];
}

/** As many digits of a key as two people compare: nobody finds another key that begins alike. */
const COMPARED = 16;

/** What tells one author's key from another's. */
export const keyLetters = (author: string): string => author.replace(UNSIGNED, '').slice(0, COMPARED);

/**
 * Known is a key that signed a record that is here already. Who has none is never known, for anybody can write on in
 * that name; and where signatures cannot be checked nobody is.
 */
async function strangers(
  store: Store,
  { verified: { entries, unchecked } }: Pick<StoreFile, 'verified'>,
): Promise<Stranger[]> {
  const here = new Set((await store.rows()).map(({ hash }) => hash));
  const known = new Set(unchecked > 0 ? [] : (await store.newest()).map(({ author }) => author));
  const fresh = new Map<string, Entry[]>();
  for (const entry of entries) {
    const { author } = entry.body;
    if (here.has(entry.row.hash) || (known.has(author) && !isUnsigned(author))) continue;
    const theirs = fresh.get(author);
    if (theirs) theirs.push(entry);
    else fresh.set(author, [entry]);
  }
  return [...fresh].map(([author, fresh]) => ({ author, fresh }));
}

export type Brought =
  | { readonly how: 'taken'; readonly taken: Taken; readonly accepted: readonly Stranger[] }
  /** Nothing was taken: something was altered. */
  | { readonly how: 'altered'; readonly faults: readonly FileFault[] }
  /** Nothing was taken: these are to be accepted first. */
  | { readonly how: 'unknown'; readonly strangers: readonly Stranger[] };

/** @param accepted authors whose keys somebody has compared, each by `keyLetters` */
export async function bringIn(
  store: Store,
  file: StoreFile,
  accepted: ReadonlySet<string>,
): Promise<Brought> {
  // What the file lacks another device's may bring; what was altered brings nothing.
  if (file.faults.some(({ what }) => what !== 'missing' && what !== 'photo-missing'))
    return { how: 'altered', faults: file.faults };
  const asked = await strangers(store, file);
  if (asked.some(({ author }) => !accepted.has(keyLetters(author))))
    return { how: 'unknown', strangers: asked };
  const taken = await take(
    store,
    file.verified.entries.map(({ row }) => row),
  );
  for (const one of file.names) await store.name(one);
  await takePhotos(store, file.photos);
  return { how: 'taken', taken, accepted: asked };
}
