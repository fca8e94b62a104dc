/**
 * The answers to every example and 400 random outings stand as they are written down, so that a move that changes
 * a figure is seen; on a push the first thirty of them. A wanted change: `npm run golden`, look at the changed lines, and say why in CHANGELOG.md.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { runs } from '../support/tier.ts';
import { goldenLines, goldenPath, RANDOM } from './lines.ts';

it('no answer changes unseen', async () => {
  const kept = readFileSync(goldenPath, 'utf8').trimEnd().split('\n');
  const random = runs(30, RANDOM);
  const now = await goldenLines(random);
  const changed = now.flatMap((line, i) => (line === kept[i] ? [] : [`- ${kept[i]}`, `+ ${line}`]));
  expect(kept.length).toBe(now.length + RANDOM - random);
  expect(changed).toEqual([]);
});
