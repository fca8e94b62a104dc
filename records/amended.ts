/** What records say now: each with what was said anew of it. Nothing that was said is ever gone. */
import { checkContent } from '../papers/record/check.ts';
import type { Content, Kind } from '../papers/record/fields.ts';
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
  const { all, anew, byHash } = indexOf(entries);
  const amendments = new Map<string, Entry[]>();
  for (const entry of anew) {
    const first = firstOf(entry, byHash);
    if (!first || first === entry || first.body.kind !== entry.body.kind) continue;
    const list = amendments.get(first.row.hash) ?? [];
    list.push(entry);
    amendments.set(first.row.hash, list);
  }
  const firsts = kind === undefined ? all.flat : (all.byKind.get(kind) ?? []);
  if (amendments.size === 0) return firsts.map((first) => new AsSaid(first, NONE));
  return firsts.map((first) => new AsSaid(first, amendments.get(first.row.hash) ?? NONE));
}

const NONE: readonly Entry[] = [];

/** What it says is read when it is asked for. */
class AsSaid implements Standing {
  readonly first: Entry;
  readonly amendments: readonly Entry[];

  constructor(first: Entry, amendments: readonly Entry[]) {
    this.first = first;
    this.amendments = amendments;
  }

  get content(): Json {
    return (this.amendments.at(-1) ?? this.first).body.content;
  }
}

interface Index {
  /** Those that say nothing anew. */
  readonly all: { readonly flat: readonly Entry[]; readonly byKind: ReadonlyMap<Kind, readonly Entry[]> };
  /** Those that do. */
  readonly anew: readonly Entry[];
  readonly byHash: ReadonlyMap<string, Entry>;
}

/** Made once for a look at a store: its records never change. */
const indexes = new WeakMap<readonly Entry[], Index>();

/** Laid out as records are looked at: what is asked of them afterwards goes straight to its kind. */
export function laidOut<T extends { readonly entries: readonly Entry[] }>(looked: T): T {
  indexOf(looked.entries);
  return looked;
}

function indexOf(entries: readonly Entry[]): Index {
  const known = indexes.get(entries);
  if (known) return known;
  const firsts: Entry[] = [];
  const anew: Entry[] = [];
  const byKind = new Map<Kind, Entry[]>();
  for (const entry of entries) {
    const { amends, kind } = entry.body;
    if (amends !== undefined) {
      anew.push(entry);
      continue;
    }
    firsts.push(entry);
    const list = byKind.get(kind);
    if (list) list.push(entry);
    else byKind.set(kind, [entry]);
  }
  const byHash = new Map(anew.length === 0 ? [] : entries.map((entry) => [entry.row.hash, entry]));
  const index = { all: { flat: firsts, byKind }, anew, byHash };
  indexes.set(entries, index);
  return index;
}

/** What it says, if that is as its kind asks; read once. */
export function contentOf<K extends Kind>({ content }: Standing, kind: K): Content<K> | undefined {
  if (!contents.has(content)) {
    const read = checkContent(kind, content);
    contents.set(content, read.ok ? read.value : undefined);
  }
  return contents.get(content) as Content<K> | undefined;
}

const contents = new WeakMap<Json, unknown>();

/** The record that a chain of amendments begins with; undefined: part of it is missing. */
function firstOf(entry: Entry, byHash: ReadonlyMap<string, Entry>): Entry | undefined {
  let at: Entry | undefined = entry;
  // A hash cannot name what came after it: no chain goes round.
  while (at?.body.amends !== undefined) at = byHash.get(at.body.amends);
  return at;
}
