/** Every finding is made by some outing, and by no question but those that say so: none stands there dead. */
import { expect, it } from 'vitest';
import { findingCodes } from '../../engine/questions/findings.ts';
import { bundled } from '../support/bundled.ts';
import { full } from '../support/tier.ts';

const makers = await bundled<typeof import('../support/makers.ts')>('makers.ts');

it('every finding code is made by some outing', () => {
  const { made, failed, undeclared } = makers.codesMade(full ? undefined : findingCodes);
  expect(failed, 'outings that no longer make the code they stand for').toEqual([]);
  expect([...undeclared], 'findings that the question’s own table does not have').toEqual([]);
  expect(
    findingCodes.filter((code) => !made.has(code)),
    'codes that no outing makes: add one to tests/support/makers.ts, or drop the code and its words',
  ).toEqual([]);
});
