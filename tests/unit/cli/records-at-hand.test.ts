/** Records that lie at hand and were not asked for: whoever checks is told that none of them is in the answer. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { STORE } from '../../../cli/records.ts';
import { unasked } from '../../../cli/shown.ts';

it('are named where a store lies here and none was asked for, and only there', () => {
  const before = process.cwd();
  process.chdir(mkdtempSync(join(tmpdir(), 'at-hand-')));
  try {
    expect(unasked(undefined)).toBe('');
    writeFileSync(STORE, '');
    expect(unasked(undefined)).toContain(`nothing recorded in it is in this answer: --records ${STORE}`);
    expect(unasked(STORE)).toBe('');
  } finally {
    process.chdir(before);
  }
});
