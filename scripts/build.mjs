// Builds the command line (one file), the library with its types and, where it is there, the web workbench.
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bundleCli } from './cli-bundle.mjs';
import { notices } from './notices.mjs';
import { bin, root, run } from './tools.mjs';

bundleCli(join(root, 'cli/heedway.ts'), join(root, 'dist/cli/heedway.mjs'));
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
process.exit(library.status || types.status || web.status);
