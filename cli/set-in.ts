/** Which field of which file holds the figure that a finding asks for. */
import { dirname, join } from 'node:path';
import { askPlace } from '../desk/ask-place.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { type FieldPath, printPath } from '../papers/problem.ts';
import { jsonIn } from './open.ts';

/** "car.json: brakes[0].force"; empty where it is no single field. */
export type SetIn = (finding: Finding) => string;

/** @param path of the outing's file @param paper the same with everything inside */
export async function setIn(
  path: string,
  paper: Readonly<Record<string, unknown>>,
  findings: readonly Finding[],
): Promise<SetIn> {
  const told = new Map<Finding, string>();
  for (const finding of findings) {
    const place = finding.measure === undefined ? undefined : askPlace(paper, finding.measure, finding.where);
    if (place) told.set(finding, await written(path, place));
  }
  return (finding) => told.get(finding) ?? '';
}

/** The file in which the path ends, following each part that is a file of its own. */
async function written(path: string, place: FieldPath): Promise<string> {
  let file = path;
  let json = await jsonIn(file);
  let within: (string | number)[] = [];
  for (const key of place) {
    const part = (json as Record<string | number, unknown> | undefined)?.[key];
    within = [...within, key];
    const next = (part as { readonly file?: unknown } | undefined)?.file;
    if (typeof next === 'string') {
      file = join(dirname(file), next);
      json = await jsonIn(file);
      within = [];
    } else json = part;
  }
  return `${file}: ${printPath(within)}`;
}
