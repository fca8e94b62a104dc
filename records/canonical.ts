/**
 * The canonical text of a value (RFC 8785): one text for one value, whoever writes it down. Keys by their UTF-16
 * units, numbers and texts as ECMAScript writes them, nothing between. What JSON cannot hold is refused, never
 * written as something else.
 */

export function canonical(value: unknown): string {
  if (value === null || typeof value === 'boolean') return JSON.stringify(value);
  if (typeof value === 'number') {
    if (Number.isFinite(value)) return JSON.stringify(value);
    throw new RangeError(`${value} has no place in a record`);
  }
  if (typeof value === 'string') return written(value);
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value === 'object') {
    const group = value as Readonly<Record<string, unknown>>;
    const keys = Object.keys(group).sort();
    return `{${keys.map((key) => `${written(key)}:${canonical(group[key])}`).join(',')}}`;
  }
  throw new RangeError(`${typeof value} has no place in a record`);
}

/** Whether a text is the canonical one of what was read from it: mostly seen without writing it anew. */
export const isCanonical = (text: string, value: unknown): boolean =>
  (JSON.stringify(value) === text && inOrder(value) && !HALF.test(text)) || canonical(value) === text;

/** Half a letter, as it is written out. */
const HALF = /\\ud[89a-f]/;

/** Keys as they should stand, all the way down. */
function inOrder(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return true;
  if (Array.isArray(value)) return value.every(inOrder);
  let before: string | undefined;
  for (const key of Object.keys(value)) {
    if (before !== undefined && !(before < key)) return false;
    if (!inOrder((value as Readonly<Record<string, unknown>>)[key])) return false;
    before = key;
  }
  return true;
}

/** Half of a pair of units is no letter: two programs would write it down in two ways. */
function written(text: string): string {
  if (text.isWellFormed()) return JSON.stringify(text);
  throw new RangeError('a text with half a letter has no place in a record');
}

const utf8 = new TextEncoder();

export const bytesOf = (text: string): Uint8Array<ArrayBuffer> => utf8.encode(text);
