// Builds the command line (one file) and, where it is there, the web workbench.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { bin, root, run } from './tools.mjs';

const cli = run(bin('esbuild'), [
  'cli/heedway.ts',
  '--bundle',
  '--platform=node',
  '--format=esm',
  '--target=node20',
  '--outfile=dist/cli/heedway.mjs',
  '--log-level=warning',
  '--external:pdfmake',
  '--external:highs',
  '--external:dejavu-fonts-ttf',
  "--banner:js=import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);",
]);
const web = existsSync(join(root, 'web', 'index.html'))
  ? run(bin('vite'), ['build', '--logLevel', 'warn'])
  : { status: 0 };
process.exit(cli.status || web.status);
