/** Paths that findings of the engine may ask for, read from its source: a new one is found without being listed. */
import { readdirSync, readFileSync } from 'node:fs';

const root = new URL('../../engine/', import.meta.url).pathname;

export function measurePaths(): string[] {
  const sources = readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((f) => f.endsWith('.ts'))
    .map((f) => readFileSync(root + f, 'utf8'));
  const paths = new Set<string>();
  for (const source of sources) {
    // What stands behind `measure:` or `measure =`, to the end of the statement.
    for (const [, said] of source.matchAll(/\bmeasure(?::| =)([^;]*?)(?=,\n|\n\s*}|;|\}\))/g))
      for (const [, path] of said.matchAll(
        /['`]((?:vehicle|line|train|host|outing|coupling|riders)\.[^'`]*)['`]/g,
      ))
        paths.add(path.replace(/\$\{[^}]*\}/g, 'x'));
    // Parts of a brake that are missing, by their field.
    for (const [, part] of source.matchAll(/'((?:rigging|hand|surge)\.\w+)'/g))
      paths.add(`vehicle.brakes.x.${part}`);
    for (const [, part] of source.matchAll(/'(brakeSupply\.\w+)'/g)) paths.add(`vehicle.${part}`);
  }
  return [...paths].sort();
}
