/** Killed at any moment (kill -9), every record that was acknowledged is there, and the store verifies. */
import { spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { expect, it } from 'vitest';
import { look } from '../../../records/ledger.ts';
import { openSqlite } from '../../../records/stores/sqlite.ts';
import { runs } from '../../support/tier.ts';

const folder = mkdtempSync(join(tmpdir(), 'killed-'));
const at = join(folder, 'club.records');
const writer = new URL('../../support/records-writer.bundle.mjs', import.meta.url).pathname;

/** What it acknowledged before it was killed, so many ms after the first. */
function killedAfter(ms: number): Promise<string[]> {
  return new Promise((done, failed) => {
    const child = spawn(process.execPath, [writer, at], { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    let faults = '';
    child.stderr.on('data', (more) => {
      faults += more;
    });
    child.stdout.on('data', (more) => {
      if (said === '') setTimeout(() => child.kill('SIGKILL'), ms);
      said += more;
    });
    child.on('close', (_code, signal) => {
      if (signal !== 'SIGKILL') failed(new Error(faults));
      // The last may be cut short: it was acknowledged only with its end.
      else done(said.split('\n').slice(0, -1));
    });
  });
}

it('every acknowledged record is there', async () => {
  // Where the packages lie, which stay apart from it.
  await build({
    entryPoints: [new URL('../../support/records-writer.ts', import.meta.url).pathname],
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    logLevel: 'error',
    outfile: writer,
  });
  (await openSqlite(at, true)).close();
  const acknowledged: string[] = [];
  for (let n = 0; n < runs(3, 1000); n++) acknowledged.push(...(await killedAfter((n * 37) % 83)));
  expect(acknowledged.length).toBeGreaterThan(3);
  const store = await openSqlite(at);
  const { entries, faults, forks } = await look(store);
  store.close();
  const there = new Set(entries.map(({ row }) => row.hash));
  expect(acknowledged.filter((hash) => !there.has(hash))).toEqual([]);
  expect([faults, forks]).toEqual([[], []]);
});
