// npm run check: types, format, lint, architecture, unused code. One line each; fails if any fails.
import { existsSync } from 'node:fs';
import { bin, runQuietly } from './tools.mjs';

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

/** Longest first: two at a time, the last of them is not waited for alone. */
const steps = [
  ['types', 'tsc', ['--noEmit']],
  ['types of the engine alone (no DOM, no Node)', 'tsc', ['--noEmit', '-p', 'engine']],
  ['unused code', 'knip', ['--no-progress']],
  ['architecture', 'depcruise', ['--config', '.dependency-cruiser.cjs', ...houseRooms]],
  ['format and lint', 'biome', ['check', '--error-on-warnings', '.']],
];

export async function check() {
  let failed = 0;
  const left = [...steps];
  const lane = async () => {
    for (let step = left.shift(); step; step = left.shift()) if (!(await passes(step))) failed++;
  };
  await Promise.all([lane(), lane()]);
  return { passed: steps.length - failed, failed };
}

async function passes([what, command, args]) {
  const { status, output } = await runQuietly(bin(command), args);
  const empty = command === 'depcruise' && !/[1-9]\d* modules/.test(output);
  const good = status === 0 && !empty;
  console.log(`${good ? 'ok    ' : 'FAILED'} ${what}`);
  if (!good) console.log(empty ? `${output}\nThe architecture check looked at no module.` : output);
  return good;
}

if (process.argv[1]?.endsWith('check.mjs')) process.exit((await check()).failed > 0 ? 1 : 0);
