// npm run check: format, lint, types, architecture, unused code. One line each; fails if any fails.
import { existsSync } from 'node:fs';
import { bin, run } from './tools.mjs';

/** Every room that the architecture check knows and that is there. */
const houseRooms = [
  'engine',
  'units',
  'data',
  'papers',
  'records',
  'words',
  'desk',
  'views',
  'library',
  'cli',
  'web',
  'server',
].filter(existsSync);

const steps = [
  ['format and lint', 'biome', ['check', '--error-on-warnings', '.']],
  ['types', 'tsc', ['--noEmit']],
  ['types of the engine alone (no DOM, no Node)', 'tsc', ['--noEmit', '-p', 'engine']],
  ['architecture', 'depcruise', ['--config', '.dependency-cruiser.cjs', ...houseRooms]],
  ['unused code', 'knip', ['--no-progress']],
];

export function check() {
  let failed = 0;
  for (const [what, command, args] of steps) {
    const { status, output } = run(bin(command), args, { quiet: true });
    const empty = command === 'depcruise' && !/[1-9]\d* modules/.test(output);
    const good = status === 0 && !empty;
    console.log(`${good ? 'ok    ' : 'FAILED'} ${what}`);
    if (!good) {
      failed++;
      console.log(empty ? `${output}\nThe architecture check looked at no module.` : output);
    }
  }
  return { passed: steps.length - failed, failed };
}

if (process.argv[1]?.endsWith('check.mjs')) process.exit(check().failed > 0 ? 1 : 0);
