/**
 * What a paper itself writes down as assumed, `{"value": "8 ft", "how": "assumed", "source": …}`, is listed with what
 * the reading assumes: no figure that nobody measured passes for one that somebody did.
 */
import type { FileKind } from '../schema/index.ts';
import type { Notes } from './notes.ts';

/** Papers inside a paper are read, and noted, by themselves. */
const parts: ReadonlySet<string> = new Set(['line', 'train', 'host', 'vehicle', 'outing', 'tests']);

export function noteWritten(kind: FileKind, json: unknown, { assumptions }: Notes): void {
  const where = `${(json as { readonly name?: unknown }).name}`;
  const walk = (part: unknown, keys: readonly string[]): void => {
    if (Array.isArray(part)) for (const item of part) walk(item, keys);
    else if (typeof part === 'object' && part !== null) {
      const { how, source, ...rest } = part as Record<string, unknown>;
      const key = `written/${keys.join('.')}`;
      // The same field of several rows of a paper once.
      if (how === 'assumed' && !assumptions.some((a) => a.key === key && a.where === where))
        assumptions.push({ of: plain(keys), where, key, source: `${source ?? 'no source'}` });
      for (const [name, inner] of Object.entries(rest)) if (!parts.has(name)) walk(inner, [...keys, name]);
    }
  };
  walk(json, [kind]);
}

/** `vehicle.axleGroups.at` → "axle groups: at" */
const plain = ([, ...keys]: readonly string[]): string =>
  keys.join(': ').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
