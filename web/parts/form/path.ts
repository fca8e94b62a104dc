/** Places in a paper: how they are named in problems, and what stands there. */
import { printPath } from '../../../papers/problem.ts';
import type { Json } from '../../state/session.ts';

export type Path = readonly (string | number)[];

export const named = printPath;

export const isGroup = (json: unknown): json is Json =>
  typeof json === 'object' && json !== null && !Array.isArray(json);

export function valueAt(json: unknown, path: Path): unknown {
  let at = json;
  for (const key of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Record<string | number, unknown>)[key];
  }
  return at;
}
