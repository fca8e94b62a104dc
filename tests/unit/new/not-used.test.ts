/** What was said and is asked of another kind of train is in no file: the terminal says so, each flag by its name. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { heedway } from '../../support/cli.ts';

const made = (...flags: string[]): string =>
  heedway('new', join(mkdtempSync(join(tmpdir(), 'not-used-')), 'made'), '--engine', 'battery', ...flags)
    .stdout;

it('names what has no place in this train', () => {
  const latched = ['--engine-brake', '40 lbf', '--engine-holds', 'by a lever', '--engine-parks', '60 lbf'];
  expect(made('--bore', '1 in', ...latched)).toContain(
    'Not used, for nothing else that was said asks for it: --bore, --engine-parks.',
  );
});

it('is silent where all has one', () => {
  expect(made('--engine-brake', '40 lbf', '--engine-parks', '60 lbf')).not.toContain('Not used');
});
