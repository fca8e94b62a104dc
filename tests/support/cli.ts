/** The built command line, run as people run it. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const root = new URL('../../', import.meta.url).pathname;
const built = `${root}dist/cli/heedway.mjs`;

export interface Ran {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

const known = new Map<string, Ran>();

/** The same command over the same files, run once for all that asks for what it says. */
export function heedwayOnce(...args: string[]): Ran {
  const key = JSON.stringify(args);
  const ran = known.get(key) ?? heedway(...args);
  known.set(key, ran);
  return ran;
}

export function heedway(...args: string[]): Ran {
  if (!existsSync(built)) throw new Error('build first: npm run build');
  const ran = spawnSync(process.execPath, [built, ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return { status: ran.status ?? -1, stdout: ran.stdout, stderr: ran.stderr };
}
