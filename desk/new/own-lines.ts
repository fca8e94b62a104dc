/** Lines that lie among one's own papers already: the next train of the day runs on the same one. */
import type { Json } from './written.ts';

export interface OwnLine {
  readonly name: string;
  readonly line: Json;
  readonly host?: Json;
}

/**
 * Each once by its name, as the first paper has it; none of an example, whatever it lies in.
 * @param papers outings with all inside, the one that is open first
 */
export function ownLines(papers: readonly Json[]): OwnLine[] {
  const found = new Map<string, OwnLine>();
  for (const { line, host } of papers as readonly { readonly line?: Json; readonly host?: Json }[]) {
    const name = String(line?.['name'] ?? '');
    if (!line || line['invented'] === true || found.has(name)) continue;
    found.set(name, { name, line, ...(host && host['invented'] !== true ? { host } : {}) });
  }
  return [...found.values()];
}
