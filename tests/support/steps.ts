/** How many steps it takes to read a large input, counted in a thread of its own. */
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { build } from 'esbuild';

export interface Counted {
  /** Pieces of code that were run, each as often as it was. */
  readonly steps: number;
  readonly told: string;
  /** How long the input was. */
  readonly letters: number;
}

export interface Counter {
  readonly count: (index: number, share: number) => Promise<Counted>;
  readonly close: () => Promise<void>;
}

export async function counter(): Promise<Counter> {
  const folder = await mkdtemp(join(tmpdir(), 'steps-'));
  const outfile = join(folder, 'large.mjs');
  await build({
    entryPoints: [new URL('./large-inputs.ts', import.meta.url).pathname],
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
    outfile,
  });
  const worker = new Worker(new URL('./steps-worker.mjs', import.meta.url), {
    execArgv: [],
    workerData: { module: pathToFileURL(outfile).href },
  });
  return {
    count: async (index, share) => {
      worker.postMessage({ index, share });
      return (await once(worker, 'message'))[0] as Counted;
    },
    close: async () => {
      await worker.terminate();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
