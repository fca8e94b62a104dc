/** Generated pages are up to date with what they are made from. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { apiPage } from '../../scripts/library-api.ts';
import { believablePage } from '../../scripts/pages/believable.ts';
import { sumPages } from '../../scripts/pages/sum-pages.ts';
import { fieldPages } from '../support/field-pages.ts';
import { full } from '../support/tier.ts';

const page = (path: string): string => readFileSync(new URL(`../../docs/${path}`, import.meta.url), 'utf8');

describe('generated pages', () => {
  it.runIf(full)('docs/believable.md is what npm run believable writes', async () =>
    expect(page('believable.md')).toBe(await believablePage()),
  );

  it('docs/library-api.md is what npm run library-api writes', () =>
    expect(page('library-api.md')).toBe(apiPage()));

  it('docs/sums is what npm run sums-docs writes', () => {
    for (const [name, text] of sumPages()) expect(page(`sums/${name}`), name).toBe(text);
  });

  it('docs/fields is what npm run fields writes', () => {
    for (const [name, text] of fieldPages()) expect(page(`fields/${name}`), name).toBe(text);
  });
});
