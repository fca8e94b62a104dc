/**
 * What lies on the shelf, and which of it is open: nothing that was written is put over by another paper, whatever both
 * are called.
 */

type Json = Readonly<Record<string, unknown>>;

export interface Shelved<T extends Json = Json> {
  /** No two of the same name. */
  readonly papers: readonly T[];
  /** Name under which the open one lies here; absent: it came from elsewhere. */
  readonly open?: string | undefined;
}

export const nameOf = (json: Json): string => String(json['name']);

const same = (a: Json, b: Json): boolean => JSON.stringify(a) === JSON.stringify(b);
export const lies = (papers: readonly Json[], json: Json): boolean => papers.some((p) => same(p, json));

/** The name, or the first with a number behind it that none of them has. */
export function freeAmong(name: string, papers: readonly Json[]): string {
  const taken = new Set(papers.map(nameOf));
  let n = 2;
  if (!taken.has(name)) return name;
  while (taken.has(`${name} ${n}`)) n++;
  return `${name} ${n}`;
}

/** Beside the others, under a name that none of them has. */
export const beside = <T extends Json>(papers: readonly T[], json: T): readonly T[] =>
  lies(papers, json) ? papers : [...papers, { ...json, name: freeAmong(nameOf(json), papers) }];

/** The open paper put back to where it lay, or beside the others. */
export function putAway<T extends Json>({ papers, open }: Shelved<T>, json: T): readonly T[] {
  if (lies(papers, json)) return papers;
  const others = papers.filter((p) => nameOf(p) !== open);
  if (others.length === papers.length) return beside(papers, json);
  const named = { ...json, name: freeAmong(nameOf(json), others) };
  return papers.map((p) => (nameOf(p) === open ? named : p));
}

/** A paper from elsewhere keeps its name: one that lies here under it takes another. */
export const makeRoom = <T extends Json>(papers: readonly T[], json: T): readonly T[] =>
  papers.map((p) =>
    nameOf(p) === nameOf(json) && !same(p, json) ? { ...p, name: freeAmong(nameOf(p), papers) } : p,
  );
