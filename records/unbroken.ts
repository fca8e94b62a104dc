/**
 * Chains in which nothing is amiss, seen by their numbers: each author's records from 1 on, each naming the one before. What does not
 * fit is looked at link by link, as `verify` does; this only spares a sound store the search.
 */
import type { Entry, Head } from './record.ts';

export interface Unbroken {
  /** Places of all of them, chain by chain: nearly in the order of their times. */
  readonly order: Uint32Array;
  /** By place, 1: the record that follows names this one's signature. */
  readonly vouched: Uint8Array;
  /** The newest of each author. */
  readonly ends: readonly Entry[];
}

/** An author's chain: where it begins in the order, and how many are in it. */
interface Chain {
  count: number;
  begins: number;
}

/** Undefined: a number is there twice or not at all, or a record names another one before it. */
export function unbroken(entries: readonly Entry[]): Unbroken | undefined {
  const chains = new Map<string, Chain>();
  for (const { body } of entries) {
    const chain = chains.get(body.author);
    if (chain) chain.count++;
    else chains.set(body.author, { count: 1, begins: 0 });
  }
  let begins = 0;
  for (const chain of chains.values()) {
    chain.begins = begins;
    begins += chain.count;
  }
  const order = new Uint32Array(entries.length).fill(NONE);
  for (let i = 0; i < entries.length; i++) {
    const { author, number } = entries[i].body;
    const { count, begins } = chains.get(author) as Chain;
    const at = begins + number - 1;
    if (number > count || order[at] !== NONE) return undefined;
    order[at] = i;
  }
  const ends: Entry[] = [];
  const vouched = new Uint8Array(entries.length);
  for (const { count, begins } of chains.values()) {
    let before: Entry | undefined;
    for (let at = begins; at < begins + count; at++) {
      const entry = entries[order[at]];
      if (entry.body.previous !== before?.row.hash) return undefined;
      // In one go: they lie all over a machine's memory, and each is fetched once.
      if (before && vouches(entry, before)) vouched[order[at - 1]] = 1;
      before = entry;
    }
    if (before) ends.push(before);
  }
  return { order, vouched, ends };
}

/** Whether a record that follows in its author's chain names both its text and its signature. */
export const vouches = ({ body }: Entry, before: Entry): boolean =>
  body.previousSignature !== undefined &&
  body.previousSignature === before.row.signature &&
  body.previous === before.row.hash &&
  body.author === before.body.author;

/** No place: there are fewer records than that. */
const NONE = 0xffffffff;

/** Whether what the store calls newest is, and what is said anew is there. */
export function fitsUnbroken(
  { ends }: Unbroken,
  entries: readonly Entry[],
  newest: readonly (Head & { readonly author: string })[],
): boolean {
  const isEnd = ({ author, hash, number }: (typeof newest)[number]): boolean =>
    ends.some(({ body, row }) => row.hash === hash && body.author === author && body.number === number);
  if (!newest.every(isEnd)) return false;
  const anew = new Set<string>();
  for (const { body } of entries) if (body.amends !== undefined) anew.add(body.amends);
  if (anew.size === 0) return true;
  let found = 0;
  for (const { row } of entries) if (anew.has(row.hash)) found++;
  return found === anew.size;
}
