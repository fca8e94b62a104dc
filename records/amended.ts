/** What records say now: each with what was said anew of it. Nothing that was said is ever gone. */
import type { Kind } from '../papers/record/fields.ts';
import type { Entry, Json } from './record.ts';

export interface Standing {
  readonly first: Entry;
  /** Records that say it anew, oldest first. */
  readonly amendments: readonly Entry[];
  /** What stands: of the newest amendment, else of the first. */
  readonly content: Json;
}

/** @param entries oldest first, as `verify` gives them */
export function standing(entries: readonly Entry[], kind?: Kind): Standing[] {
  const byHash = new Map(entries.map((entry) => [entry.row.hash, entry]));
  const amendments = new Map<string, Entry[]>();
  for (const entry of entries) {
    const first = firstOf(entry, byHash);
    if (!first || first === entry || first.body.kind !== entry.body.kind) continue;
    const list = amendments.get(first.row.hash) ?? [];
    list.push(entry);
    amendments.set(first.row.hash, list);
  }
  return entries
    .filter((entry) => entry.body.amends === undefined && (kind === undefined || entry.body.kind === kind))
    .map((first) => {
      const anew = amendments.get(first.row.hash) ?? [];
      return { first, amendments: anew, content: (anew[anew.length - 1] ?? first).body.content };
    });
}

/** The record that a chain of amendments begins with; undefined: part of it is missing. */
function firstOf(entry: Entry, byHash: ReadonlyMap<string, Entry>): Entry | undefined {
  let at: Entry | undefined = entry;
  // A hash cannot name what came after it: no chain goes round.
  while (at?.body.amends !== undefined) at = byHash.get(at.body.amends);
  return at;
}
