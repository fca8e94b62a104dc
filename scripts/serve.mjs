// Serves a folder of built pages on loopback only.
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};

const policy = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "worker-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** The file of the folder that a request names; undefined where it names none, or cannot be read as a path. */
async function fileFor(folder, url) {
  try {
    const path = normalize(decodeURIComponent(url.split(/[?#]/, 1)[0]));
    const wanted = join(folder, path === sep ? 'index.html' : path);
    return wanted.startsWith(folder + sep) && (await stat(wanted)).isFile() ? wanted : undefined;
  } catch {
    return undefined;
  }
}

/** @returns {Promise<{ url: string, close: () => Promise<void> }>} */
export function serve(folder, port) {
  const server = createServer(async (request, response) => {
    const file = await fileFor(folder, request.url ?? '/');
    if (!file || !['GET', 'HEAD'].includes(request.method ?? '')) {
      response.writeHead(404, { 'content-type': 'text/plain' }).end('not here');
      return;
    }
    response.writeHead(200, {
      'content-type': types[extname(file)] ?? 'application/octet-stream',
      'content-security-policy': policy,
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cache-control': /assets/.test(file) ? 'max-age=31536000, immutable' : 'no-cache',
    });
    createReadStream(file).pipe(response);
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
