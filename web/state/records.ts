/** Records in this browser: loaded with the first room that shows or keeps some. */
import { signal } from '@preact/signals';
import type { Trouble } from '../../papers/problem.ts';
import { bringIn, keyLetters } from '../../records/bring.ts';
import { readStoreFile, storeFile } from '../../records/file.ts';
import { canHash, hex, newKeys } from '../../records/hash.ts';
import { look, photosFor, put } from '../../records/ledger.ts';
import { personNamed } from '../../records/names.ts';
import { type Photo, photosNamed } from '../../records/photos.ts';
import { type Author, type Entry, type Said, UNSIGNED } from '../../records/record.ts';
import { remove } from '../../records/remove.ts';
import { type IndexedStore, openIndexed } from '../../records/stores/indexed.ts';
import type { Depth } from '../../records/verify.ts';
import { tellBrought } from '../../words/records/brought.ts';
import { inTurn } from './in-turn.ts';
import { clock, type Kept, kept } from './kept.ts';
import { heed } from './shown.ts';
import { whyShut } from './storage.ts';

export { clock, type Kept, kept };

/** Why there are none to be had here; empty: there are. */
export const barred = signal('');

const NO_HASH =
  'Records need a page that came over https or from this machine itself: over plain http a browser hashes nothing.';
const SHUT = 'Records are open in another way, or the browser has shut its storage: load the page again.';

let opening: Promise<IndexedStore> | undefined;
const opened = (): Promise<IndexedStore> => {
  opening ??= openIndexed('heedway-records', () => {
    opening = undefined;
    barred.value = SHUT;
  });
  return opening;
};

/** Other tabs have the same records. */
const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel('heedway-records') : undefined;
channel?.addEventListener('message', () => void openRecords());

/** As far as any room has asked for since the page was loaded. */
let deepest: Depth = 'chain';

/** A look that began before something was recorded must not hide it. */
const looks = inTurn();

/** All records, looked at anew. @param depth `each`: every signature by itself too */
export async function openRecords(depth: Depth = deepest): Promise<Kept | undefined> {
  deepest = depth;
  if (!canHash()) {
    barred.value = NO_HASH;
    return undefined;
  }
  const isNewest = looks();
  try {
    const store = await opened();
    const [verified, names, me] = await Promise.all([
      look(store, depth, clock.program),
      store.names(),
      store.me(),
    ]);
    const now = { ...verified, names, me };
    if (!isNewest()) return now;
    barred.value = '';
    kept.value = now;
    // Whoever has records has them heeded, whichever room asked for them.
    heed();
    return now;
  } catch (fault) {
    if (!isNewest()) return undefined;
    opening = undefined;
    barred.value = whyShut(fault);
    return undefined;
  }
}

const changed = async (): Promise<void> => {
  channel?.postMessage('changed');
  await openRecords();
};

/** A key of this browser's own, which never leaves it; and the first record: who writes here. */
export async function beginRecords(name: string): Promise<void> {
  const store = await opened();
  const keys = await newKeys(false);
  const letters = (count: number): string => hex(crypto.getRandomValues(new Uint8Array(count)));
  const author = await store.begin({
    name: keys?.name ?? `${UNSIGNED}${letters(16)}`,
    device: letters(4),
    ...(keys ? { keys } : {}),
  });
  const { person } = await personNamed(store, name);
  await write(store, author, { kind: 'author', content: { person }, said: clock.now() });
  // Else a browser that is short of room may throw records away.
  await navigator.storage?.persist?.().catch(() => false);
  await changed();
}

export class Refused extends Error {
  constructor(troubles: readonly Trouble[]) {
    super(troubles.map((t) => `${t.path.join('.')}: found ${t.found}; expected ${t.expected}`).join('; '));
  }
}

async function write(store: IndexedStore, author: Author, said: Said): Promise<Entry> {
  const done = await put(store, said, author, clock);
  if (!done.ok) throw new Refused(done.troubles);
  return done.entry;
}

/** One record more; it is kept when this is done. What comes of it otherwise is thrown, and said by who asked. */
export async function record(said: Omit<Said, 'said'> & { readonly said?: string }): Promise<Entry> {
  const store = await opened();
  const me = await store.me();
  if (!me) throw new Error('nobody writes here yet');
  const entry = await write(store, me, { said: clock.now(), ...said });
  await changed();
  return entry;
}

/** Takes out what has reached its end; how many. */
export async function removeEnded(): Promise<number> {
  const store = await opened();
  const me = await store.me();
  if (!me) throw new Error('nobody writes here yet');
  const done = await remove(store, me, clock);
  if (!done.ok) throw new Error('something is amiss in these records');
  await changed();
  return done.gone.length;
}

/** A photo, kept before the record that names it. */
export async function keepPhoto(photo: Photo): Promise<void> {
  await (await opened()).keepPhoto(photo);
}

/** One that was taken and left out again, unless a record names it. */
export async function dropPhoto(hash: string): Promise<void> {
  const store = await opened();
  if (!photosNamed((await look(store, 'chain')).entries).has(hash)) await store.dropPhotos([hash]);
}

export const photoBytes = async (hash: string): Promise<Uint8Array<ArrayBuffer> | undefined> =>
  (await opened()).photo(hash);

export const photosHere = async (entries: readonly Entry[]): Promise<readonly Photo[]> =>
  photosFor(await opened(), entries);

export async function person(name: string): Promise<string> {
  return (await personNamed(await opened(), name)).person;
}

/** @param persons all of one name */
export async function strikeName(persons: readonly string[]): Promise<void> {
  const store = await opened();
  for (const person of persons) await store.strike(person);
  await changed();
}

export const asFile = async (withNames: boolean): Promise<string> => {
  const now = await openRecords('whole');
  if (!now) return '';
  return storeFile(now, withNames ? now.names : [], await photosFor(await opened(), now.entries));
};

interface TookFile {
  readonly said: readonly string[];
  /** Keys that are to be accepted before anything is taken, each told in the last lines of what is said. */
  readonly asks: readonly string[];
}

/** What came of a file of records, in words. @param accepted keys that somebody has compared */
export async function takeFile(
  bytes: Uint8Array,
  accepted: ReadonlySet<string> = new Set(),
): Promise<TookFile> {
  const file = await readStoreFile(bytes);
  const store = await opened();
  const brought = await bringIn(store, file, accepted);
  if (brought.how === 'taken') await changed();
  const here = kept.value ?? { entries: [], names: [] };
  return {
    said: tellBrought(brought, file, here),
    asks: brought.how === 'unknown' ? brought.strangers.map(({ author }) => keyLetters(author)) : [],
  };
}

export const saying = (fault: unknown): string =>
  (fault as DOMException | undefined)?.name === 'QuotaExceededError'
    ? 'The browser’s storage is full: nothing was recorded.'
    : `Nothing was recorded: ${fault instanceof Error ? fault.message : String(fault)}.`;
