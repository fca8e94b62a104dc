/** What README and CONTRIBUTING name of the house is there: a newcomer goes by them. */
import { existsSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;

it.each(['README.md', 'CONTRIBUTING.md'])('every path in %s is there', (page) => {
  const text = readFileSync(root + page, 'utf8');
  const named = [...text.matchAll(/[`(]([a-z][\w.-]*(?:\/[\w.-]+)*\/?)[`)]/g)].map(([, path]) => path);
  const paths = named.filter((path) => path.includes('/') && existsSync(root + path.split('/')[0]));
  expect(paths.length).toBeGreaterThan(8);
  expect(paths.filter((path) => !existsSync(root + path))).toEqual([]);
});
