// The notices that go with everything we hand out: each package whose code or letters are in it, with its licence.
// Not what npm fetches beside it on a machine that has it: the keeper of records. Made from the lock file, so that none can be forgotten; a package without a licence text stops the build.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './tools.mjs';

/** Packages that only build, but write a part of themselves into the pages: the keeper of the offline copy. */
const BUILT_IN = /^node_modules\/workbox-(core|precaching|routing|strategies)$/;

const MIT = `Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
documentation files (the "Software"), to deal in the Software without restriction, including without limitation the
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit
persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the
Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`;

const authorOf = ({ author }) => (typeof author === 'string' ? author : author?.name);

/** What the package itself ships as its licence; where it only names MIT, that licence's own words. */
function licenceOf(folder, about) {
  const texts = readdirSync(folder)
    .filter((name) => /^(licen[cs]e|copying|notice|ofl)/i.test(name))
    .sort()
    .map((name) => readFileSync(join(folder, name), 'utf8').replace(/\r\n?/g, '\n').trim());
  if (texts.length > 0) return texts.join('\n\n');
  if (about.license === 'MIT' && authorOf(about)) return `Copyright (c) ${authorOf(about)}\n\n${MIT}`;
  throw new Error(`${about.name}: no licence text to hand on`);
}

/** Name, version and folder of every package in what we hand out, by name. */
export function shipped() {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  return Object.entries(packages)
    .filter(
      ([path, { dev, devOptional, optional }]) =>
        path !== '' && ((!dev && !devOptional && !optional) || BUILT_IN.test(path)),
    )
    .map(([path, { version }]) => ({ path, name: path.replace(/^.*node_modules\//, ''), version }))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));
}

export function notices() {
  const parts = shipped().map(({ path, name, version }) => {
    const folder = join(root, path);
    const about = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const licence = about.license ? ` (${about.license})` : '';
    return `${name} ${version}${licence}\n\n${licenceOf(folder, about)}\n`;
  });
  const own = readFileSync(join(root, 'LICENSE'), 'utf8').trim();
  const line = `\n${'='.repeat(78)}\n\n`;
  return `Heedway\n\n${own}\n${line}It is made with the work of others, whose notices follow.\n${line}${parts.join(line)}`;
}
