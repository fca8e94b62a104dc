/** Search that knows the trade's words, US and UK, and a slip of the finger. The index is made when first asked. */
import MiniSearch, { type Query } from 'minisearch';
import type { Wording } from '../../words/voice.ts';
import { type Entry, type EntryKind, entriesIn } from './entries.ts';
import { groups, hollow } from './trade-words.ts';

/** What one comes to do stands before what one may read about. */
const worth: Readonly<Record<EntryKind, number>> = { task: 3, sum: 1.5, word: 0.9, field: 1, finding: 0.8 };
const MOST = 12;
/** A title that begins as it was asked. */
const AS_WRITTEN = 4;

interface Index {
  readonly search: MiniSearch<Entry>;
  readonly byId: ReadonlyMap<string, Entry>;
}

const made = new Map<Wording, Index>();

function indexOf(wording: Wording): Index {
  const known = made.get(wording);
  if (known) return known;
  const entries = entriesIn(wording);
  const search = new MiniSearch<Entry>({
    fields: ['title', 'also', 'tells'],
    processTerm: (term) => stem(term),
    searchOptions: {
      boost: { title: 3, also: 2 },
      prefix: (term) => term.length > 2,
      fuzzy: (term) => (term.length > 3 ? 0.25 : false),
      weights: { fuzzy: 0.3, prefix: 0.6 },
    },
  });
  search.addAll(entries);
  const index = { search, byId: new Map(entries.map((e) => [e.id, e])) };
  made.set(wording, index);
  return index;
}

/** "bogies" → "bogie", "classes" → "class": enough for the trade. */
function stem(term: string): string {
  const word = term.toLowerCase().replace(/[’']s?$/, '');
  if (word.length > 4 && /(ss|sh|ch|x)es$/.test(word)) return word.slice(0, -2);
  return word.length > 3 && /[^su]s$/.test(word) ? word.slice(0, -1) : word;
}

/** A word and those that mean the same, on the other shore too; a slip in a longer word is forgiven. */
function kin(word: string): readonly string[] {
  const stemmed = stem(word);
  const having = (same: (w: string) => boolean): string[] => groups.filter((g) => g.some(same)).flat();
  const others = having((w) => stem(w) === stemmed);
  const slipped = others.length === 0 && word.length > 4 ? having((w) => oneSlip(stem(w), stemmed)) : [];
  return [...new Set([word, ...others, ...slipped])];
}

/** One letter more, fewer, other, or two changed over. */
function oneSlip(a: string, b: string): boolean {
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  const [x, y] = [a.slice(i), b.slice(i)];
  return (
    x.slice(1) === y.slice(1) ||
    x.slice(1) === y ||
    x === y.slice(1) ||
    (x[0] === y[1] && x[1] === y[0] && x.slice(2) === y.slice(2))
  );
}

/** Best first; empty where nothing is like it. */
export function find(sought: string, wording: Wording): readonly Entry[] {
  const words = sought.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const telling = words.filter((w) => !hollow.has(w));
  const asked = telling.length > 0 ? telling : words;
  if (asked.length === 0) return [];
  const { search, byId } = indexOf(wording);
  const phrase = words.join(' ');
  const boost = (entry: Entry | undefined): number =>
    entry ? worth[entry.kind] * (entry.title.toLowerCase().startsWith(phrase) ? AS_WRITTEN : 1) : 0;
  const told = (combineWith: 'AND' | 'OR'): readonly Entry[] => {
    const query: Query = { combineWith, queries: asked.map(oneOf) };
    return search
      .search(query, { boostDocument: (id) => boost(byId.get(String(id))) })
      .flatMap(({ id }) => byId.get(String(id)) ?? [])
      .slice(0, MOST);
  };
  const all = told('AND');
  return all.length > 0 ? all : told('OR');
}

/** The word itself with its slips counts full, its kin a little less and as they are written. */
const oneOf = (word: string): Query => {
  const [, ...others] = kin(word);
  return {
    combineWith: 'OR',
    queries: [word, ...others.map((w) => ({ queries: [w], fuzzy: false, prefix: false, boost: KIN }))],
  };
};
const KIN = { title: 1.5, also: 1.2, tells: 0.5 };
