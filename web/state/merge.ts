/** Two changes of one paper put together: each field as whoever changed it has it. */

type Group = Readonly<Record<string, unknown>>;

export interface Merged {
  readonly paper: unknown;
  /** Both changed the same: mine stands. */
  readonly clash: boolean;
}

const isGroup = (json: unknown): json is Group =>
  typeof json === 'object' && json !== null && !Array.isArray(json);

const same = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/** @param from what both began with */
export function merge(from: unknown, mine: unknown, theirs: unknown): Merged {
  if (same(from, mine) || same(mine, theirs)) return { paper: theirs, clash: false };
  if (same(from, theirs)) return { paper: mine, clash: false };
  if (isGroup(from) && isGroup(mine) && isGroup(theirs)) return mergeGroups(from, mine, theirs);
  if (!Array.isArray(from) || !Array.isArray(mine) || !Array.isArray(theirs))
    return { paper: mine, clash: true };
  // Rows that were put in or taken out no longer say which is which.
  if (from.length !== mine.length || from.length !== theirs.length) return { paper: mine, clash: true };
  const parts = from.map((part, i) => merge(part, mine[i], theirs[i]));
  return { paper: parts.map((p) => p.paper), clash: parts.some((p) => p.clash) };
}

function mergeGroups(from: Group, mine: Group, theirs: Group): Merged {
  const paper: Record<string, unknown> = {};
  let clash = false;
  // In the order of theirs, what only mine has behind it.
  for (const key of new Set([...Object.keys(theirs), ...Object.keys(mine)])) {
    const part = merge(from[key], mine[key], theirs[key]);
    if (part.paper !== undefined) paper[key] = part.paper;
    clash ||= part.clash;
  }
  return { paper, clash };
}
