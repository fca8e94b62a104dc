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
  const chains = new Map<string, Entry[]>();
  for (const entry of entries) {
    const { author, number } = entry.body;
    const chain = chains.get(author) ?? [];
    if (chain.length === 0) chains.set(author, chain);
    if (number > entries.length || chain[number - 1]) return undefined;
    chain[number - 1] = entry;
  }
  const ends = new Set<Entry>();
  for (const chain of chains.values()) {
    // What is not there is a hole in the list, and met as one.
    for (let i = 0; i < chain.length; i++)
      if (!chain[i] || chain[i].body.previous !== chain[i - 1]?.row.hash) return undefined;
    ends.add(chain[chain.length - 1]);
  }
  return { all: [...chains.values()].flat(), ends };
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
