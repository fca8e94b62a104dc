/** The command line as one module with its entry to call, for the tests, which keep it standing. */
import { buildSync } from 'esbuild';

export const bundleCli = (entry, outfile) =>
  buildSync({
    entryPoints: [entry],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'warning',
    external: ['pdfmake', 'highs', '@libsql/client', 'dejavu-fonts-ttf'],
    banner: {
      js: "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);",
    },
  });
