// Serves a folder of built pages on loopback only.
import { createReadStream } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { pipeline } from 'node:stream';
import { policyFor } from './policy.mjs';

const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};

const headers = policyFor('header');

/** The names of this machine alone: no other page may reach it by a name of its own. */
const ours = /^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/;

/** The file of the folder that a request names; undefined where it names none, or cannot be read as a path. */
async function fileFor(folder, url) {
  try {
    const path = normalize(decodeURIComponent(url.split(/[?#]/, 1)[0]));
    const wanted = join(folder, path === sep ? 'index.html' : path);
    // A link may lead out of the folder: what it leads to counts, and it must be the very file.
    const [real, home] = await Promise.all([realpath(wanted), realpath(folder)]);
    if (real !== join(home, wanted.slice(folder.length))) return undefined;
    const info = await stat(real);
    return wanted.startsWith(folder + sep) && info.isFile() ? { path: real, size: info.size } : undefined;
  } catch {
    return undefined;
  }
}

/** @returns {Promise<{ url: string, close: () => Promise<void> }>} */
export function serve(folder, port) {
  const server = createServer(async (request, response) => {
    if (!ours.test(request.headers.host ?? '')) {
      response.writeHead(421, { 'content-type': 'text/plain' }).end('not this host');
      return;
    }
    const file = await fileFor(folder, request.url ?? '/');
    if (!file || !['GET', 'HEAD'].includes(request.method ?? '')) {
      response.writeHead(404, { 'content-type': 'text/plain' }).end('not here');
      return;
    }
    response.writeHead(200, {
      'content-type': types[extname(file.path)] ?? 'application/octet-stream',
      'content-length': file.size,
      'content-security-policy': headers,
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cache-control': /assets/.test(file.path) ? 'max-age=31536000, immutable' : 'no-cache',
    });
    if (request.method === 'HEAD') response.end();
    // A file that cannot be read, or no more handles: this answer breaks off, the server goes on.
    else pipeline(createReadStream(file.path), response, () => response.destroy());
  });
  return new Promise((done, failed) => {
    server.once('error', (error) => {
      if (error.code === 'EADDRINUSE' && port !== 0) server.listen(0, '127.0.0.1');
      else failed(error);
    });
    server.listen(port, '127.0.0.1', () => undefined);
    server.once('listening', () => {
      const { port: used } = server.address();
      done({
        url: `http://127.0.0.1:${used}/`,
        close: () => new Promise((end) => server.close(() => end())),
      });
    });
  });
}
