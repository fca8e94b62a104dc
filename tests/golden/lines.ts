/** All lines of the golden of answers. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { bundled } from '../support/bundled.ts';

export const RANDOM = 400;
const folder = new URL('.', import.meta.url).pathname;
export const goldenPath = join(folder, 'answers.txt');

/** @param random of how many random outings: the first */
export async function goldenLines(random = RANDOM): Promise<string[]> {
  const { exampleLine, randomLine } = await bundled<typeof import('./told.ts')>('../golden/told.ts');
  const examples = join(folder, '../../examples');
  const names = readdirSync(examples).filter((name) => name.endsWith('.json'));
  const lines: string[] = [];
  for (const name of names.sort()) lines.push(await exampleLine(name.slice(0, -5), join(examples, name)));
  for (let seed = 1; seed <= random; seed++) lines.push(randomLine(seed));
  return lines;
}
