/**
 * What a paper itself writes down as assumed, `{"value": "8 ft", "how": "assumed", "source": …}`, is listed with what
 * the reading assumes: no figure that nobody measured passes for one that somebody did.
 */
import type { FileKind } from '../schema/index.ts';
import type { Notes } from './notes.ts';

/** Papers inside a paper are read, and noted, by themselves. */
const parts: ReadonlySet<string> = new Set(['line', 'train', 'host', 'vehicle']);

export function noteWritten(kind: FileKind, json: unknown, notes: Notes): void {
  const where = String((json as { readonly name?: unknown }).name);
  walk(json, [], (keys, source) => {
    const key = `written/${[kind, ...keys].join('.')}`;
    // The same field of several rows of a paper once.
    if (notes.assumptions.some((a) => a.key === key && a.where === where)) return;
    notes.assumptions.push({ of: keys.map(plain).join(': '), where, key, source });
  });
}

function walk(
  json: unknown,
  keys: readonly string[],
  found: (keys: readonly string[], source: string) => void,
): void {
  if (Array.isArray(json)) {
    for (const item of json) walk(item, keys, found);
    return;
  }
  if (typeof json !== 'object' || json === null) return;
  const { how, source, ...rest } = json as Record<string, unknown>;
  if (how === 'assumed')
    found(keys, typeof source === 'string' ? source : 'written down as assumed, no source');
  for (const [key, part] of Object.entries(rest)) if (!parts.has(key)) walk(part, [...keys, key], found);
}

/** `wheelBase` → "wheel base" */
const plain = (key: string): string => key.replace(/([a-z])([A-Z])/g, (_, a, b) => `${a} ${b.toLowerCase()}`);
