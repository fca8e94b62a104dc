/**
 * Every finding is made by some outing, and by no question but those that say so: none stands there dead. Of a code with an
 * outing of its own it is written down how it weighs, of which figures, and what is tried for it: `npm run golden`
 * writes it anew, and CHANGELOG.md says why a line changed.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findingCodes } from '../../engine/questions/findings.ts';
import { bundled } from '../support/bundled.ts';
import { full } from '../support/tier.ts';

const makers = await bundled<typeof import('../support/makers/index.ts')>('makers/index.ts');
const path = new URL('every-code.txt', import.meta.url).pathname;
const kept = readFileSync(path, 'utf8').split('\n');

describe('a finding', () => {
  it.each(makers.ownCodes)('%s weighs as it is written down, of the same figures', (code) =>
    expect(makers.found(code)).toEqual(kept.filter((line) => line.startsWith(`${code} | `))),
  );
});

it('every finding code is made by some outing', () => {
  const { made, undeclared } = makers.codesMade(full ? undefined : findingCodes);
  expect([...undeclared], 'findings that the question’s own table does not have').toEqual([]);
  expect(
    findingCodes.filter((code) => !made.has(code)),
    'codes that no outing makes: add one to tests/support/makers/, or drop the code and its words',
  ).toEqual([]);
  // What is written down is of an outing that makes it.
  expect(makers.ownCodes.filter((code) => !kept.some((line) => line.startsWith(`${code} | `)))).toEqual([]);
});
