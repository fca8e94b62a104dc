/**
 * The program as V8 compiled it when it was built: compiled.bin beside program.cjs. Another V8 leaves that and compiles
 * anew. Nor does it optimise functions that run for some milliseconds only, which here costs as much as the reckoning,
 * or take the first round of a loop apart from the others: laying the code takes longer than it saves.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';

export const COMPILED = 'compiled.bin';

/** Bytes of bytecode that a function runs through before it is optimised: V8's own measure is 66 to 132 thousand. */
const OPTIMISED_AFTER = 1_300_000;

/** V8 says aloud that it does not know a switch: to take no loops apart only those versions are told that were tried. */
const TAKES_LOOPS_APART = /^11\./.test(process.versions.v8);

/** What is compiled with other switches is compiled anew. */
export const SWITCHES: readonly string[] = [
  `--interrupt-budget=${OPTIMISED_AFTER}`,
  ...(TAKES_LOOPS_APART ? ['--no-turbo-loop-peeling'] : []),
];

/** Runs the program of a folder. */
export function runProgram(folder: string): Script {
  for (const one of SWITCHES) setFlagsFromString(one);
  const filename = join(folder, 'program.cjs');
  const cachedData = compiledIn(folder);
  // The build writes it in ASCII.
  const script = new Script(readFileSync(filename, 'latin1'), {
    filename,
    ...(cachedData ? { cachedData } : {}),
  });
  const program = script.runInThisContext() as (require: NodeJS.Require, filename: string) => void;
  program(createRequire(filename), filename);
  return script;
}

function compiledIn(folder: string): Buffer | undefined {
  try {
    return readFileSync(join(folder, COMPILED));
  } catch {
    return undefined;
  }
}
