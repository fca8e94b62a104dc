/** The tests and the code with every mutant in it, as one bundle. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, type Metafile, type Plugin } from 'esbuild';
import { type Mutant, mutate } from './mutants.ts';

const root = new URL('../../', import.meta.url).pathname;
/** Beside the packages, which bundles take from where they stand. */
export const folder = join(root, 'dist', 'mutate');
export const bundle = join(folder, 'all.mjs');

/** Tests that run in the process itself: the others run what was built, or look at the tree. */
const rooms = ['unit', 'laws', 'numerics', 'truth', 'meta'];
/** These run the built command line or the server of the pages, read the tree, or put modules in the place of others. */
const outside = /support\/cli\.ts|scripts\/serve\.mjs|git', \['ls-files'|\bvi\b.* from 'vitest'/;

/** The golden of answers, each of its outings a test. */
const golden = 'scripts/mutate/golden.ts';

/** Tests under folders, or files, with commas between, without those under `skip`. */
export const testFiles = (under: string, skip = ' '): string[] =>
  rooms
    .flatMap((room) =>
      readdirSync(join(root, 'tests', room), { recursive: true, encoding: 'utf8' }).map((f) =>
        join('tests', room, f),
      ),
    )
    .filter(
      (f) =>
        under.split(',').some((folder) => f.startsWith(folder)) &&
        !skip.split(',').some((folder) => f.startsWith(folder)) &&
        f.endsWith('.test.ts') &&
        !outside.test(readFileSync(join(root, f), 'utf8')),
    )
    .concat(skip.split(',').includes('golden') ? [] : [golden]);

/** Source files under what was named: a folder, or a file. */
export function sourceFiles(named: readonly string[]): string[] {
  return named.flatMap((name) => {
    if (name.endsWith('.ts')) return [name];
    const files = readdirSync(join(root, name), { recursive: true, encoding: 'utf8' });
    return files.filter((f) => f.endsWith('.ts') && !f.endsWith('types.ts')).map((f) => join(name, f));
  });
}

export const read = (file: string): string => readFileSync(join(root, file), 'utf8');

/** Every mutant of the files, and the files' code with those in it that are kept. */
export function mutateAll(files: readonly string[], keep?: ReadonlySet<number>) {
  let first = 1;
  const code = new Map<string, string>();
  const mutants: Mutant[] = [];
  for (const file of files) {
    const count = mutate(file, read(file), first).mutants.length;
    const written = mutate(file, read(file), first, keep && ((m) => keep.has(m.id)));
    code.set(file, written.code);
    mutants.push(...written.mutants);
    first += count;
  }
  return { code, mutants };
}

/**
 * All files of tests and the code with its mutants as one bundle, in which a file is run when it is asked for; gives by
 * file of tests which files of the code it reaches.
 */
export async function bundleTests(
  tests: readonly string[],
  code: ReadonlyMap<string, string>,
): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const files = tests.map((t) => `${JSON.stringify(t)}: () => import('./${t}'),`).join('\n');
  const { metafile } = await build({
    stdin: {
      contents: `export { choose, reached } from './scripts/mutate/switch.ts';\nexport const files = {\n${files}\n};`,
      resolveDir: root,
      sourcefile: 'all.ts',
      loader: 'ts',
    },
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    logLevel: 'error',
    metafile: true,
    outfile: bundle,
    absWorkingDir: root,
    plugins: [withMutants(code)],
  });
  return new Map(tests.map((test) => [test, within(test, metafile, code)]));
}

/** What a file imports, itself or by others, of the code. */
function within(test: string, { inputs }: Metafile, code: ReadonlyMap<string, string>): ReadonlySet<string> {
  const seen = new Set<string>([test]);
  for (const file of seen)
    for (const { path } of inputs[file]?.imports ?? []) if (inputs[path]) seen.add(path);
  return new Set([...seen].filter((file) => code.has(file)));
}

export const bundleWorker = (): Promise<unknown> =>
  build({
    entryPoints: ['worker.ts', 'vitest-stand-in.ts'].map((f) => join(root, 'scripts', 'mutate', f)),
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    outExtension: { '.js': '.mjs' },
    logLevel: 'error',
    outdir: folder,
  });

function withMutants(code: ReadonlyMap<string, string>): Plugin {
  return {
    name: 'with mutants',
    setup(to) {
      to.onResolve({ filter: /^vitest$/ }, () => ({ path: './vitest-stand-in.mjs', external: true }));
      // What is bundled apart for speed would be bundled without the mutants: here it is one of the modules.
      to.onLoad({ filter: /tests\/support\/bundled\.ts$/ }, () => ({
        contents: 'export const bundled = (entry) => import("./" + entry.replace("../support/", ""));',
        loader: 'ts',
      }));
      to.onLoad({ filter: /\.tsx?$/ }, ({ path }) => {
        if (path.includes('/node_modules/')) return undefined;
        const source = code.get(relative(root, path)) ?? readFileSync(path, 'utf8');
        return {
          contents: source.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href)),
          loader: path.endsWith('x') ? 'tsx' : 'ts',
        };
      });
    },
  };
}
