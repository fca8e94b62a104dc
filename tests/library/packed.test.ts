/** The package as others get it: packed, unpacked into an empty project, run in Node and bundled for a browser. */
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'project-'));
const installed = join(folder, 'node_modules', 'heedway');

beforeAll(() => {
  if (!existsSync(join(root, 'dist', 'library', 'heedway.mjs')))
    throw new Error('build first: npm run build');
  const packed = execFileSync('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], {
    cwd: root,
    encoding: 'utf8',
  });
  const [{ filename }] = JSON.parse(packed) as [{ filename: string }];
  mkdirSync(installed, { recursive: true });
  execFileSync('tar', ['xzf', join(folder, filename), '-C', installed, '--strip-components=1']);
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
  cpSync(join(root, 'examples'), join(folder, 'examples'), { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const inProject = (name: string, code: string) => {
  writeFileSync(join(folder, name), code);
  return spawnSync(process.execPath, [name], { cwd: folder, encoding: 'utf8' });
};

describe('the packed library', () => {
  const page = readFileSync(`${root}docs/library.md`, 'utf8');
  const snippets = [...page.matchAll(/```js\n([\s\S]*?)```/g)].map(([, code]) => code);

  it('is told with snippets', () => expect(snippets.length).toBeGreaterThanOrEqual(2));

  it.each(snippets.map((code, i) => [i + 1, code] as const))('snippet %i runs', (i, code) => {
    const { status, stdout, stderr } = inProject(`snippet-${i}.mjs`, code);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toMatch(/\d m|limits|hold|unknown|go/);
  });

  it('gives its face and no more', () => {
    const { stdout } = inProject(
      'face.mjs',
      "import * as face from 'heedway'; console.log(Object.keys(face).sort().join());",
    );
    expect(stdout.trim()).toBe('answer,readOuting,sum');
  });

  it('is typed', () => {
    writeFileSync(
      join(folder, 'typed.ts'),
      "import { sum, type Verdict } from 'heedway';\nexport const text: string | undefined = ((r) => (r.ok ? r.answer.id : undefined))(sum('x', {}));\nexport const word: Verdict = 'go';\n",
    );
    const tsc = join(root, 'node_modules', '.bin', 'tsc');
    const flags = ['--noEmit', '--strict', '--module', 'nodenext', '--skipLibCheck'];
    const checked = spawnSync(tsc, [...flags, 'typed.ts'], { cwd: folder, encoding: 'utf8' });
    expect(checked.stdout).toBe('');
    expect(checked.status).toBe(0);
  });

  it('bundles for a browser: no module of Node in it', async () => {
    writeFileSync(join(folder, 'page.js'), "import { sum } from 'heedway'; globalThis.sum = sum;");
    const { outputFiles } = await build({
      entryPoints: [join(folder, 'page.js')],
      absWorkingDir: folder,
      bundle: true,
      platform: 'browser',
      format: 'iife',
      write: false,
      logLevel: 'error',
    });
    expect(outputFiles[0].text).not.toMatch(/from ["']node:|require\(["']node:/);
  });
});
