/**
 * The rooms below the command line and the page as one module for the tests, with what each file of them exports. Run
 * from one module, the engine's inner loops take two thirds of the time that they take from hundreds, and hundreds of
 * files are not read by every worker of the test runner.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const ROOMS = ['engine', 'units', 'data', 'papers', 'records', 'words', 'desk', 'views'];

export const root = new URL('../../', import.meta.url).pathname;

const common = {
  platform: 'node',
  format: 'esm',
  target: 'es2023',
  logLevel: 'error',
  write: false,
  absWorkingDir: root,
};

/** The bundle's text, and by file (from the root) the name that it goes by in the bundle, and its exports. */
export async function bundleRooms() {
  const files = ROOMS.flatMap((room) =>
    readdirSync(join(root, room), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .map((file) => `${room}/${file.replaceAll('\\', '/')}`),
  );
  const { metafile } = await build({
    ...common,
    entryPoints: files,
    bundle: false,
    outdir: 'out',
    metafile: true,
  });
  const faces = new Map();
  for (const { entryPoint, exports } of Object.values(metafile.outputs))
    if (exports.length > 0) faces.set(entryPoint, { name: `room${faces.size}`, exports });
  const contents = [...faces].map(([file, { name }]) => `export * as ${name} from './${file}';`).join('\n');
  const { outputFiles } = await build({
    ...common,
    stdin: { contents, resolveDir: root, sourcefile: 'rooms.ts', loader: 'ts' },
    bundle: true,
    packages: 'external',
    sourcemap: 'inline',
    sourcesContent: false,
    sourceRoot: root,
  });
  return { code: outputFiles[0].text, faces };
}
