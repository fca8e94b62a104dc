/**
 * The answers to every example and 400 random outings stand as they are written down, so that a move that changes
 * a figure is seen. A wanted change: `npm run golden`, look at the changed lines, and say why in CHANGELOG.md.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { goldenLines, goldenPath } from './lines.ts';

it('no answer changes unseen', async () => {
  const kept = readFileSync(goldenPath, 'utf8').trimEnd().split('\n');
  const now = await goldenLines();
  const changed = now.flatMap((line, i) => (line === kept[i] ? [] : [`- ${kept[i]}`, `+ ${line}`]));
  expect(kept.length).toBe(now.length);
  expect(changed).toEqual([]);
});
