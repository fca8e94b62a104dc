// Builds the command line (the program, as it was compiled, and what starts it), the library with its types and, where it is there, the web workbench.
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { notices } from './notices.mjs';
import { bin, root, run } from './tools.mjs';

const cli = program();
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
process.exit(cli || library.status || types.status || web.status);

/** What was compiled of a program before it never meets this one. */
function program() {
  rmSync(join(root, 'dist', 'cli', 'compiled.bin'), { force: true });
  const bundled = (from, to, ...more) =>
    run(bin('esbuild'), [
      `cli/${from}.ts`,
      '--bundle',
      '--platform=node',
      '--target=node20',
      `--outfile=dist/cli/${to}`,
      '--log-level=warning',
      ...more,
    ]).status;
  return (
    bundled('heedway', 'heedway.mjs', '--format=esm') ||
    bundled(
      'program',
      'program.cjs',
      '--format=cjs',
      '--external:pdfmake',
      '--external:highs',
      '--external:@libsql/client',
      '--external:dejavu-fonts-ttf',
      '--supported:dynamic-import=false',
      '--define:import.meta.url=__filename',
      '--banner:js=(function (require, __filename) {',
      '--footer:js=})',
    ) ||
    inAscii(join(root, 'dist', 'cli', 'program.cjs')) ||
    run(bin('tsx'), ['scripts/compiled.ts'], { quiet: true }).status
  );
}

/** A letter a byte, so that it is read without being decoded: esbuild leaves regular expressions as they are written. */
function inAscii(file) {
  const escaped = (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`;
  writeFileSync(file, readFileSync(file, 'utf8').replace(/[^\0-\x7f]/g, escaped));
  return 0;
}
