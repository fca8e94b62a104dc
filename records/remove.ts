/** Taking out what has reached its end: first the record that says so, then what it names. Stopped between, it is done again. */
import { ended } from './ended.ts';
import { type Clock, look, put } from './ledger.ts';
import { photosNamed } from './photos.ts';
import type { Author, Entry } from './record.ts';
import { type Gone, removalsIn } from './removed.ts';
import type { Store } from './store.ts';

/** As many are named in one record. */
const MOST = 10_000;

export type Removed =
  | { readonly ok: true; readonly gone: readonly Gone[]; readonly entries: readonly Entry[] }
  /** In a store in which something is amiss nothing is taken out: it may be what shows what. */
  | { readonly ok: false; readonly faults: number };

/** Whatever another device's records say was removed, only what has ended by what stands here goes. */
export async function remove(store: Store, author: Author, clock: Clock): Promise<Removed> {
  const { entries, faults } = await look(store);
  if (faults.length > 0) return { ok: false, faults: faults.length };
  const gone = ended(entries, clock.now().slice(0, 10));
  const { gone: told } = removalsIn(entries);
  const fresh = gone.filter(({ hash }) => !told.has(hash));
  const written: Entry[] = [];
  for (let from = 0; from < fresh.length; from += MOST) {
    const said = {
      kind: 'removal',
      content: { removed: fresh.slice(from, from + MOST) },
      said: clock.now(),
    } as const;
    const done = await put(store, said, author, clock);
    if (!done.ok) throw new Error('a removal that its own program does not read');
    written.push(done.entry);
  }
  if (gone.length > 0) {
    // Photos first: what they leave in the file's free pages goes with the rest.
    await store.dropPhotos(photosOf(entries, new Set(gone.map(({ hash }) => hash))));
    await store.remove(gone.map(({ hash }) => hash));
  }
  return { ok: true, gone, entries: written };
}

/** Of what goes, those that nothing names which stays. */
const photosOf = (entries: readonly Entry[], gone: ReadonlySet<string>): readonly string[] =>
  [...photosNamed(entries)].flatMap(([hash, by]) =>
    by.every(({ row }) => gone.has(row.hash)) ? [hash] : [],
  );
