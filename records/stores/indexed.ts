/**
 * Records in the browser's own database. Every step is one transaction, concluded at once and to be on the disk before it
 * is acknowledged; two tabs wait for each other.
 */
import { type IDBPDatabase, openDB } from 'idb';
import type { Photo } from '../photos.ts';
import type { Author, Row } from '../record.ts';
import type { Named, Store } from '../store.ts';
import type { Newest } from '../verify.ts';

const stores = {
  records: 'hash',
  newest: ['author', 'hash'],
  names: 'person',
  mine: 'what',
  photos: 'hash',
} as const;

export interface IndexedStore extends Store {
  /** Who writes here; undefined: nobody has begun. */
  readonly me: () => Promise<Author | undefined>;
  /** The first to begin stays: another tab's is given back. */
  readonly begin: (author: Author) => Promise<Author>;
}

const STRICT = { durability: 'strict' } as const;

/** @param lost hears that the database was shut later on */
export async function openIndexed(name: string, lost: () => void): Promise<IndexedStore> {
  const db = await openDB(name, 2, {
    upgrade: (db) => {
      // One of before photos has all but those.
      for (const [store, key] of Object.entries(stores))
        if (!db.objectStoreNames.contains(store))
          db.createObjectStore(store, { keyPath: key as string | string[] });
    },
    blocking: (_old, _next, event) => {
      (event.target as IDBDatabase).close();
      lost();
    },
    terminated: lost,
  });
  return storeOn(db);
}

interface Mine {
  readonly what: 'author';
  readonly author: Author;
}

function storeOn(db: IDBPDatabase): IndexedStore {
  return {
    rows: () => db.getAll('records') as Promise<Row[]>,
    row: (hash) => db.get('records', hash) as Promise<Row | undefined>,
    newest: () => db.getAll('newest') as Promise<Newest[]>,
    add: async (row, at, after) => {
      const step = db.transaction(['records', 'newest'], 'readwrite', STRICT);
      const newest = step.objectStore('newest');
      const mine = (await newest.getAll()).filter((n: Newest) => n.author === at.author);
      const follows = after ? mine.some((n: Newest) => n.hash === after.hash) : mine.length === 0;
      await Promise.all([
        ...(follows ? [newest.put(at), step.objectStore('records').add(row)] : []),
        ...(follows && after ? [newest.delete([at.author, after.hash])] : []),
        step.done,
      ]);
      return follows;
    },
    take: async (rows, now, had) => {
      const step = db.transaction(['records', 'newest'], 'readwrite', STRICT);
      const records = step.objectStore('records');
      const same = (await records.count()) === had;
      const newest = step.objectStore('newest');
      await Promise.all([
        ...(same
          ? [newest.clear(), ...now.map((n) => newest.put(n)), ...rows.map((row) => records.add(row))]
          : []),
        step.done,
      ]);
      return same;
    },
    remove: async (hashes) => {
      const step = db.transaction('records', 'readwrite', STRICT);
      await Promise.all([...hashes.map((hash) => step.store.delete(hash)), step.done]);
    },
    names: async () => ((await db.getAll('names')) as Named[]).filter(({ name }) => name !== ''),
    name: async (named) => {
      const step = db.transaction('names', 'readwrite', STRICT);
      const known = (await step.store.get(named.person)) !== undefined;
      await Promise.all([...(known ? [] : [step.store.put(named)]), step.done]);
    },
    strike: async (person) => void (await db.put('names', { person, salt: '', name: '' })),
    keepPhoto: async (photo) => {
      const step = db.transaction('photos', 'readwrite', STRICT);
      await Promise.all([step.store.put(photo), step.done]);
    },
    photo: async (hash) => ((await db.get('photos', hash)) as Photo | undefined)?.bytes,
    dropPhotos: async (hashes) => {
      const step = db.transaction('photos', 'readwrite', STRICT);
      await Promise.all([...hashes.map((hash) => step.store.delete(hash)), step.done]);
    },
    me: async () => ((await db.get('mine', 'author')) as Mine | undefined)?.author,
    begin: async (author) => {
      const step = db.transaction('mine', 'readwrite', STRICT);
      const there = (await step.store.get('author')) as Mine | undefined;
      await Promise.all([...(there ? [] : [step.store.put({ what: 'author', author })]), step.done]);
      return there?.author ?? author;
    },
  };
}
