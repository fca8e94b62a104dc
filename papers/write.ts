/**
 * Writing files byte for byte alike: known fields first in the schema's order, two spaces, a newline at the
 * end. What a person wrote stays as written.
 */
import { type FileKind, schemas } from './schema/index.ts';
import { type Definition, inner } from './schema/shape.ts';

function ordered(json: unknown, schema: Definition | undefined): unknown {
  const at = inner(schema);
  if (Array.isArray(json)) return json.map((item) => ordered(item, at?.def.element));
  if (typeof json !== 'object' || json === null) return json;
  const kind = (json as { heedway?: unknown }).heedway;
  const own =
    typeof kind === 'string' && Object.hasOwn(schemas, kind)
      ? inner(schemas[kind as FileKind] as unknown as Definition)
      : at;
  const shape = own?.def.shape ?? {};
  const known = Object.keys(shape).filter((key) => Object.hasOwn(json, key));
  const other = Object.keys(json)
    .filter((key) => !Object.hasOwn(shape, key))
    .sort();
  return Object.fromEntries(
    [...known, ...other].map((key) => [key, ordered((json as Record<string, unknown>)[key], shape[key])]),
  );
}

/** Canonical text of any Heedway file given as plain JSON. */
export function writeFile(json: unknown): string {
  return `${JSON.stringify(ordered(json, undefined), null, 2)}\n`;
}
