/** The golden of answers as tests of their own, one for each outing: a change is noticed by the first that differs. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { exampleLine, randomLine } from '../../tests/golden/told.ts';

const root = new URL('../../', import.meta.url).pathname;
const kept = readFileSync(join(root, 'tests/golden/answers.txt'), 'utf8').trimEnd().split('\n');
/** So many of the random outings: each runs through most of the engine. */
const RANDOM = 20;

for (const line of kept.slice(0, kept.findIndex((l) => l.startsWith('random ')) + RANDOM)) {
  const [name, seed] = line.split(/ +/);
  if (name === 'random') it(`golden ${seed}`, () => expect(randomLine(Number(seed))).toBe(line));
  else
    it(`golden ${name}`, async () =>
      expect(await exampleLine(name, join(root, 'examples', `${name}.json`))).toBe(line));
}
