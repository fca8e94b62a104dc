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

/** A thousand in full, in pieces: a machine that is busy is slow and no fault of the store's. */
const [PIECES, KILLS] = [runs(1, 40), runs(3, 25)];
const killed = join(folder, 'club.records');
const acknowledged: string[] = [];

it.each(Array.from({ length: PIECES }, (_, i) => i))(
  'every acknowledged record is there, piece %i',
  async (piece) => {
    if (piece === 0) (await openSqlite(killed, true)).close();
    const before = acknowledged.length;
    for (let n = 0; n < KILLS; n++)
      acknowledged.push(...(await killedAfter(((piece * KILLS + n) * 37) % 83, killed)));
    expect(acknowledged.length).toBeGreaterThan(before + KILLS - 1);
    expect(await lost(killed, acknowledged)).toEqual([[], [], []]);
  },
);

it.each([64, 90, 131, 200].slice(0, runs(1, 4)))(
  'no file may be larger than %i kB: it is said, and nothing half-written',
  async (most) => {
    const at = join(folder, `full-${most}.records`);
    (await openSqlite(at, true)).close();
    const line = `ulimit -f ${most}; exec "$0" "$@"`;
    const { stdout, stderr, status } = spawnSync('bash', ['-c', line, process.execPath, writer, at], {
      encoding: 'utf8',
      timeout: 600_000,
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
