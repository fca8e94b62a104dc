// Builds the command line (one file), the library with its types and, where it is there, the web workbench.
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { notices } from './notices.mjs';
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
  '--external:@libsql/client',
  '--external:dejavu-fonts-ttf',
  "--banner:js=import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);",
]);
const library = run(bin('esbuild'), [
  'library/index.ts',
  '--bundle',
  '--platform=neutral',
  '--main-fields=module,main',
  '--format=esm',
  '--target=es2022',
  '--outfile=dist/library/heedway.mjs',
  '--log-level=warning',
]);
const types = run(bin('tsc'), ['-p', 'library']);
const web = existsSync(join(root, 'web', 'index.html'))
  ? run(bin('vite'), ['build', '--logLevel', 'warn'])
  : { status: 0 };
writeFileSync(join(root, 'dist', 'notices.txt'), notices());
process.exit(cli.status || library.status || types.status || web.status);
