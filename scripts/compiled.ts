/** Keeps what V8 compiles of the built program while it checks an outing: the start of every later command. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { COMPILED, runProgram } from '../cli/compiled.ts';

const folder = join(import.meta.dirname, '..', 'dist', 'cli');
process.argv.splice(2, Infinity, 'check', join('examples', 'heavy-air.json'));
const script = runProgram(folder);
process.on('exit', (code) => {
  // May leave within limits: the program itself ran well.
  if (code === 10) process.exitCode = 0;
  writeFileSync(join(folder, COMPILED), script.createCachedData());
});
