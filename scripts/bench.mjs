// npm run bench: bundles the benchmarks (as the shipped code is bundled) and runs them.
import { bin, run } from './tools.mjs';

const built = run(bin('esbuild'), [
  'bench/run.ts',
  '--bundle',
  '--platform=node',
  '--format=esm',
  '--outfile=dist/bench.mjs',
  '--log-level=warning',
  '--external:@libsql/client',
  '--external:odex',
  '--external:ode-rk4',
  '--external:dopri',
  '--external:highs',
  '--external:playwright*',
  '--external:@playwright/*',
  "--banner:js=import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);",
]);
process.exit(built.status || run(process.execPath, ['dist/bench.mjs']).status);
