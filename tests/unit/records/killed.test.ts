/** Killed at any moment (kill -9), or with no room left, every record that was acknowledged is there, and the store verifies. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { beforeAll, expect, it } from 'vitest';
import { look } from '../../../records/ledger.ts';
import { openSqlite } from '../../../records/stores/sqlite.ts';
import { runs } from '../../support/tier.ts';

const folder = mkdtempSync(join(tmpdir(), 'killed-'));
const writer = new URL('../../support/records-writer.bundle.mjs', import.meta.url).pathname;

/** What it acknowledged before it was killed, so many ms after the first. */
function killedAfter(ms: number, at: string): Promise<string[]> {
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

beforeAll(async () => {
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
});

/** Those of the acknowledged that are not there, and what is amiss with the rest. */
async function lost(at: string, acknowledged: readonly string[]) {
  const store = await openSqlite(at);
  const { entries, faults, forks } = await look(store);
  store.close();
  const there = new Set(entries.map(({ row }) => row.hash));
  return [acknowledged.filter((hash) => !there.has(hash)), faults, forks];
}

it('every acknowledged record is there', async () => {
  const at = join(folder, 'club.records');
  (await openSqlite(at, true)).close();
  const acknowledged: string[] = [];
  for (let n = 0; n < runs(3, 1000); n++) acknowledged.push(...(await killedAfter((n * 37) % 83, at)));
  expect(acknowledged.length).toBeGreaterThan(3);
  expect(await lost(at, acknowledged)).toEqual([[], [], []]);
});

it.each([64, 90, 131, 200].slice(0, runs(1, 4)))(
  'no file may be larger than %i kB: it is said, and nothing half-written',
  async (most) => {
    const at = join(folder, `full-${most}.records`);
    (await openSqlite(at, true)).close();
    const line = `ulimit -f ${most}; exec "$0" "$@"`;
    const { stdout, stderr, status } = spawnSync('bash', ['-c', line, process.execPath, writer, at], {
      encoding: 'utf8',
      timeout: 120_000,
    });
    const acknowledged = stdout.split('\n').slice(0, -1);
    expect(acknowledged.length).toBeGreaterThan(3);
    expect([status, stderr]).toEqual([1, expect.stringContaining('nothing was written')]);
    expect(await lost(at, acknowledged)).toEqual([[], [], []]);
    // With room again it goes on.
    const more = await killedAfter(0, at);
    expect(await lost(at, [...acknowledged, ...more])).toEqual([[], [], []]);
  },
);
