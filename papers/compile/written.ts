/**
 * What a paper itself writes down as assumed, `{"value": "8 ft", "how": "assumed", "source": …}`, is listed with what
 * the reading assumes: no figure that nobody measured passes for one that somebody did.
 */
import { aboutOf } from '../describe.ts';
import { type FileKind, schemas } from '../schema/index.ts';
import { type Definition, inner } from '../schema/shape.ts';
import type { Notes } from './notes.ts';

/** Papers inside a paper are read, and noted, by themselves. */
const parts: ReadonlySet<string> = new Set(['line', 'train', 'host', 'vehicle']);

export function noteWritten(kind: FileKind, json: unknown, notes: Notes): void {
  const where = String((json as { readonly name?: unknown }).name);
  walk(json, schemas[kind] as unknown as Definition, [kind], where, notes);
}

function walk(
  json: unknown,
  schema: Definition | undefined,
  keys: readonly string[],
  where: string,
  notes: Notes,
): void {
  if (Array.isArray(json)) {
    const { element } = inner(schema)?.def ?? {};
    for (const item of json) walk(item, element, keys, where, notes);
    return;
  }
  if (typeof json !== 'object' || json === null) return;
  const group = json as Record<string, unknown>;
  if (group['how'] === 'assumed') list(group, schema, keys, where, notes);
  const shape = inner(schema)?.def.shape ?? {};
  for (const [key, part] of Object.entries(group))
    if (!parts.has(key)) walk(part, shape[key], [...keys, key], where, notes);
}

/** The same field of several rows of a paper once. */
function list(
  { source }: Record<string, unknown>,
  schema: Definition | undefined,
  keys: readonly string[],
  where: string,
  notes: Notes,
): void {
  const key = `written/${keys.join('.')}`;
  if (notes.assumptions.some((a) => a.key === key && a.where === where)) return;
  const label = (aboutOf(schema ?? {})?.label ?? keys[keys.length - 1]).replace(/[{}]/g, '');
  notes.assumptions.push({
    of: keys.length > 2 ? `${plain(keys[keys.length - 2])}: ${label}` : label,
    where,
    key,
    source: typeof source === 'string' ? source : 'written down as assumed, no source',
  });
}

/** `axleGroups` → "axle groups" */
const plain = (key: string): string => key.replace(/([a-z])([A-Z])/g, (_, a, b) => `${a} ${b.toLowerCase()}`);
