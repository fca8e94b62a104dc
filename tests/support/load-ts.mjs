/**
 * How the tests load the house: what lies below the command line and the page from one bundle, all else file by file
 * with its types taken out.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { transform } from 'esbuild';
import { bundleRooms, root } from './rooms-bundle.mjs';

/** Lies nowhere; where it would lie it finds its packages. */
const BUNDLE = pathToFileURL(`${root}tests/support/rooms-in-one.mjs`).href;

let bundling;
const rooms = () => {
  bundling ??= bundleRooms();
  return bundling;
};

const given = (source) => ({ format: 'module', source, shortCircuit: true });

export const resolve = (specifier, context, next) =>
  specifier === BUNDLE ? { url: BUNDLE, format: 'module', shortCircuit: true } : next(specifier, context);

export async function load(url, context, next) {
  if (url === BUNDLE) return given((await rooms()).code);
  const { protocol, pathname } = new URL(url);
  if (protocol !== 'file:' || !/\.tsx?$/.test(pathname) || pathname.includes('/node_modules/'))
    return next(url, context);
  const file = fileURLToPath(url);
  const face = (await rooms()).faces.get(file.slice(root.length));
  return given(face ? faceOf(face) : await typeless(file));
}

const faceOf = ({ name, exports }) =>
  `import { ${name} } from '${BUNDLE}';\nexport const { ${exports.join(', ')} } = ${name};\n`;

async function typeless(file) {
  const { code } = await transform(readFileSync(file, 'utf8'), {
    loader: file.endsWith('x') ? 'tsx' : 'ts',
    format: 'esm',
    target: 'es2023',
    supported: { 'import-attributes': true },
    jsx: 'automatic',
    jsxImportSource: 'preact',
    sourcefile: file,
    sourcemap: 'inline',
    sourcesContent: false,
  });
  return code;
}
