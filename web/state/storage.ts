/**
 * The browser's own database, opened so that a newer page is never in its way, nor it in theirs; and what is said
 * where it is not to be had.
 */
import { type IDBPDatabase, openDB } from 'idb';

export const FULL = 'The browser could not keep your work: its storage is full or shut.';
export const NOTHING = 'The browser keeps nothing here.';
const NEWER =
  'A newer Heedway has kept work here, which this page cannot read and leaves alone: load the page again.';
const TAKEN =
  'A newer Heedway is open in another tab: load this page again. What you change here is not kept.';
const GONE = 'The browser has shut its storage: what you change here is not kept.';

/** Why a storage could not be opened. */
export const whyShut = (fault: unknown): string =>
  (fault as DOMException | undefined)?.name === 'VersionError' ? NEWER : NOTHING;

/** @param lost hears that it was shut later on, and why */
export const openStore = (name: string, store: string, lost: (why: string) => void): Promise<IDBPDatabase> =>
  openDB(name, 1, {
    upgrade: (fresh) => void fresh.createObjectStore(store),
    // A newer page waits for this one to let go of the old kind of store.
    blocking: (_old, _next, event) => {
      (event.target as IDBDatabase).close();
      lost(TAKEN);
    },
    terminated: () => lost(GONE),
  });
