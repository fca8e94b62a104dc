/**
 * A support module bundled as it ships, and imported: the test runner's own way of loading modules makes the
 * engine's inner loops about three times slower.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

/** The test runner has the house in one bundle already (loading.mjs), and warm: there it is taken from that. */
const inOne = process.execArgv.some((flag) => flag.endsWith('tests/support/loading.mjs'));

/** @param entry file beside this one */
export async function bundled<T>(entry: string): Promise<T> {
  if (inOne) return (await import(new URL(entry, import.meta.url).href)) as T;
  const folder = await mkdtemp(join(tmpdir(), 'heedway-bundle-'));
  try {
    const outfile = join(folder, 'bundle.mjs');
    await build({
      entryPoints: [new URL(entry, import.meta.url).pathname],
      bundle: true,
      platform: 'node',
      format: 'esm',
      logLevel: 'error',
      outfile,
    });
    return (await import(/* @vite-ignore */ pathToFileURL(outfile).href)) as T;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
