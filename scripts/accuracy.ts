/**
 * npm run accuracy [-- test file …]
 *
 * Runs the tests that compare with outside figures and with independent code (full tier, unless TIER says push) and writes what they
 * measured into docs/accuracy.md; with files named, their lines alone are measured anew.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { accuracyPage, nameOf, type Row, rowsOf } from './pages/accuracy.ts';

const page = new URL('../docs/accuracy.md', import.meta.url);
const named = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'heedway-measured-'));
try {
  const ran = spawnSync(
    process.execPath,
    [
      join('node_modules', 'vitest', 'vitest.mjs'),
      'run',
      ...(named.length > 0 ? named : ['tests/truth', 'tests/numerics', 'tests/witness']),
    ],
    { stdio: 'inherit', env: { TIER: 'full', ...process.env, MEASURED: folder } },
  );
  if (ran.status !== 0) process.exit(1);
  const measured = readdirSync(folder).flatMap(
    (file) => JSON.parse(readFileSync(join(folder, file), 'utf8')) as Row[],
  );
  const anew = new Set(measured.map(nameOf));
  const kept = named.length > 0 && existsSync(page) ? rowsOf(readFileSync(page, 'utf8')) : [];
  writeFileSync(page, accuracyPage([...kept.filter((row) => !anew.has(nameOf(row))), ...measured]));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
