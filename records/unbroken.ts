/**
 * Chains in which nothing is amiss, seen by their numbers: each author's records from 1 on, each naming the one before. What does not
 * fit is looked at link by link, as `verify` does; this only spares a sound store the search.
 */
import type { Entry, Head } from './record.ts';

export interface Unbroken {
  /** All of them, chain by chain: nearly in the order of their times. */
  readonly all: readonly Entry[];
  /** The newest of each author. */
  readonly ends: ReadonlySet<Entry>;
}

/** Undefined: a number is there twice or not at all, or a record names another one before it. */
export function unbroken(entries: readonly Entry[]): Unbroken | undefined {
  const counts = new Map<string, number>();
  for (const { body } of entries) counts.set(body.author, (counts.get(body.author) ?? 0) + 1);
  // As long as they will be from the beginning: records come in no order, and a list full of holes is slow.
  const chains = new Map<string, (Entry | undefined)[]>();
  for (const [author, count] of counts) chains.set(author, new Array(count).fill(undefined));
  for (const entry of entries) {
    const { author, number } = entry.body;
    const chain = chains.get(author);
    if (!chain || number > chain.length || chain[number - 1]) return undefined;
    chain[number - 1] = entry;
  }
  const all: Entry[] = [];
  const ends = new Set<Entry>();
  for (const chain of chains.values()) {
    let before: Entry | undefined;
    for (const entry of chain) {
      if (!entry || entry.body.previous !== before?.row.hash) return undefined;
      all.push(entry);
      before = entry;
    }
    if (before) ends.add(before);
  }
  return { all, ends };
}

/** Whether what the store calls newest is, and what is said anew is there. */
export function fitsUnbroken(
  { ends }: Unbroken,
  entries: readonly Entry[],
  newest: readonly (Head & { readonly author: string })[],
): boolean {
  const isEnd = ({ author, hash, number }: (typeof newest)[number]): boolean =>
    [...ends].some(({ body, row }) => row.hash === hash && body.author === author && body.number === number);
  if (!newest.every(isEnd)) return false;
  const anew = new Set(entries.flatMap(({ body: { amends } }) => amends ?? []));
  if (anew.size === 0) return true;
  let found = 0;
  for (const { row } of entries) if (anew.has(row.hash)) found++;
  return found === anew.size;
}
