/**
 * The command line as people run it. A process for each command spends most of its time in getting warm: on a push all
 * commands of a test run go to one that is kept standing, but for the few that are run alone; in full each is alone.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';
import { full } from './tier.ts';

const { bundleCli } = (await import('../../scripts/cli-bundle.mjs' as string)) as {
  bundleCli: (entry: string, outfile: string) => void;
};

const root = new URL('../../', import.meta.url).pathname;
const built = `${root}dist/cli/heedway.mjs`;

export interface Ran {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** In a process of its own, as it was built. */
export function heedwayAlone(...args: string[]): Ran {
  if (!existsSync(built)) throw new Error('build first: npm run build');
  const ran = spawnSync(process.execPath, [built, ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return { status: ran.status ?? -1, stdout: ran.stdout, stderr: ran.stderr };
}

/** A command may take so long, ms. */
const PATIENCE = 300_000;

type Standing = (args: readonly string[]) => Ran;
let standing: Standing | undefined;

export function heedway(...args: string[]): Ran {
  if (full) return heedwayAlone(...args);
  standing ??= stand(bundle());
  return standing(args);
}

/** The same bundle as is built, but with its entry to call: in the project, where it finds its packages. */
function bundle(): string {
  mkdirSync(`${root}dist`, { recursive: true });
  const folder = mkdtempSync(`${root}dist/standing-`);
  const file = join(folder, 'main.mjs');
  bundleCli(`${root}cli/main.ts`, file);
  return file;
}

function stand(file: string): Standing {
  const answered = new Int32Array(new SharedArrayBuffer(4));
  const { port1: ours, port2: theirs } = new MessageChannel();
  const worker = new Worker(new URL('./standing-cli.mjs', import.meta.url), {
    workerData: { port: theirs, answered, module: pathToFileURL(file).href },
    transferList: [theirs],
    execArgv: [],
  });
  worker.unref();
  ours.unref();
  return (args) => {
    Atomics.store(answered, 0, 0);
    ours.postMessage(args);
    if (Atomics.wait(answered, 0, 0, PATIENCE) === 'timed-out')
      throw new Error(`no answer to: ${args.join(' ')}`);
    return receiveMessageOnPort(ours)?.message as Ran;
  };
}

const known = new Map<string, Ran>();

/** The same command over the same files, run once for all that asks for what it says. */
export function heedwayOnce(...args: string[]): Ran {
  const key = JSON.stringify(args);
  const ran = known.get(key) ?? heedway(...args);
  known.set(key, ran);
  return ran;
}
