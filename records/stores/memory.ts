/** Records in memory: for looking at a file of them, and for trying things out. */
import type { Head, Row } from '../record.ts';
import type { Named, Store } from '../store.ts';
import type { Newest } from '../verify.ts';

export function memoryStore(): Store {
  const rows = new Map<string, Row>();
  let newest: readonly Newest[] = [];
  const names = new Map<string, Named>();
  const photos = new Map<string, Uint8Array<ArrayBuffer>>();
  const isHead = (author: string, after: Head | undefined): boolean =>
    after
      ? newest.some((n) => n.author === author && n.hash === after.hash)
      : !newest.some((n) => n.author === author);
  return {
    rows: async () => [...rows.values()],
    row: async (hash) => rows.get(hash),
    newest: async () => newest,
    add: async (row, at, after) => {
      if (!isHead(at.author, after)) return false;
      rows.set(row.hash, row);
      newest = [...newest.filter((n) => !(n.author === at.author && n.hash === after?.hash)), at];
      return true;
    },
    take: async (fresh, now, had) => {
      if (rows.size !== had) return false;
      for (const row of fresh) rows.set(row.hash, row);
      newest = now;
      return true;
    },
    remove: async (hashes) => {
      for (const hash of hashes) rows.delete(hash);
    },
    names: async () => [...names.values()].filter(({ name }) => name !== ''),
    name: async (named) => void (names.has(named.person) || names.set(named.person, named)),
    strike: async (person) => void names.set(person, { person, salt: '', name: '' }),
    keepPhoto: async ({ hash, bytes }) => void photos.set(hash, bytes),
    photo: async (hash) => photos.get(hash),
    dropPhotos: async (hashes) => {
      for (const hash of hashes) photos.delete(hash);
    },
  };
}
