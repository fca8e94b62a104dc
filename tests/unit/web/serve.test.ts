/** The server of the built pages stays up and keeps to its folder, whatever is asked of it. */
import { mkdtemp, symlink, writeFile } from 'node:fs/promises';
import { type IncomingMessage, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

interface Served {
  readonly url: string;
  readonly close: () => Promise<void>;
}

const { serve } = (await import('../../../scripts/serve.mjs' as string)) as {
  serve: (folder: string, port: number) => Promise<Served>;
};

let server: Served;
beforeAll(async () => {
  const folder = await mkdtemp(join(tmpdir(), 'pages-'));
  await writeFile(join(folder, 'index.html'), 'the page');
  const elsewhere = await mkdtemp(join(tmpdir(), 'elsewhere-'));
  await writeFile(join(elsewhere, 'secret.txt'), 'secret');
  await symlink(join(elsewhere, 'secret.txt'), join(folder, 'link.txt'));
  await symlink(elsewhere, join(folder, 'inner'));
  server = await serve(folder, 0);
});
afterAll(() => server.close());

/** The path exactly as written: a URL object would tidy it first. */
const ask = (path: string, method = 'GET', headers: Record<string, string> = {}): Promise<number> =>
  answerTo(path, method, headers).then(({ statusCode }) => statusCode ?? 0);

const answerTo = (path: string, method: string, headers: Record<string, string>): Promise<IncomingMessage> =>
  new Promise((done, failed) => {
    const { hostname, port } = new URL(server.url);
    request({ hostname, port, path, method, headers, agent: false }, (answer) => {
      answer.resume();
      done(answer);
    })
      .on('error', failed)
      .end();
  });

describe('the server of the pages', () => {
  it('gives the page', async () => {
    expect(await ask('/')).toBe(200);
    expect(await ask('/index.html?once')).toBe(200);
    expect(await ask('//')).toBe(200);
  });

  it.each([
    '/%zz',
    '/%00',
    '/../package.json',
    '/%2e%2e/package.json',
    '/..%2fpackage.json',
    '/nothing',
    '/link.txt',
    '/inner/secret.txt',
  ])('refuses %s and goes on', async (path) => {
    expect([400, 404]).toContain(await ask(path));
    expect(await ask('/')).toBe(200);
  });

  it('tells how long the page is without giving it', async () => {
    const { statusCode, headers } = await answerTo('/', 'HEAD', {});
    expect(statusCode).toBe(200);
    expect(headers['content-length']).toBe('8');
    expect(headers['content-security-policy']).toContain("form-action 'none'");
  });

  it('answers to the names of this machine alone', async () => {
    expect(await ask('/', 'GET', { host: 'elsewhere.example' })).toBe(421);
    expect(await ask('/', 'GET', { host: 'localhost:4173' })).toBe(200);
  });

  it('takes nothing', async () => {
    expect(await ask('/', 'POST')).toBe(404);
  });

  it('goes on after a file that fails while it is read', async () => {
    // An ordinary file by its looks, which cannot be read at its beginning.
    const odd = await serve('/proc/self', 0);
    const answer = await fetch(`${odd.url}mem`).then(
      (got) => got.text(),
      () => 'broken off',
    );
    expect(['', 'broken off']).toContain(answer);
    expect((await fetch(`${odd.url}nothing`)).status).toBe(404);
    await odd.close();
  });
});
