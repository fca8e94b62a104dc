/** How the command line starts: from what was compiled at the build, and no worse where that does not serve. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SWITCHES } from '../../../cli/compiled.ts';

const built = new URL('../../../dist/cli', import.meta.url).pathname;

const node = (...args: string[]) => spawnSync(process.execPath, args, { encoding: 'utf8' });

describe('the start of the program', () => {
  it('takes what V8 compiled when it was built', () => {
    const asks = `
      for (const one of ${JSON.stringify(SWITCHES)}) require('node:v8').setFlagsFromString(one);
      const { readFileSync } = require('node:fs');
      const [source, cachedData] = [readFileSync('program.cjs', 'latin1'), readFileSync('compiled.bin')];
      console.log(new (require('node:vm').Script)(source, { cachedData }).cachedDataRejected);`;
    const ran = spawnSync(process.execPath, ['-e', asks], { cwd: built, encoding: 'utf8' });
    expect(ran.stdout.trim()).toBe('false');
  });

  it('is written a letter a byte, as it is read', () => {
    expect(/[^\0-\x7f]/.test(readFileSync(join(built, 'program.cjs'), 'utf8'))).toBe(false);
  });

  it('compiles anew where that is broken', () => {
    const folder = mkdtempSync(join(tmpdir(), 'start-'));
    cpSync(built, folder, { recursive: true });
    writeFileSync(join(folder, 'compiled.bin'), 'not compiled');
    const ran = node(join(folder, 'heedway.mjs'), '--version');
    expect([ran.status, ran.stderr]).toEqual([0, '']);
    expect(ran.stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});
