/** The server of the built pages stays up and keeps to its folder, whatever is asked of it. */
import { mkdtemp, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
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
  server = await serve(folder, 0);
});
afterAll(() => server.close());

/** The path exactly as written: a URL object would tidy it first. */
const ask = (path: string, method = 'GET'): Promise<number> =>
  new Promise((done, failed) => {
    const { hostname, port } = new URL(server.url);
    request({ hostname, port, path, method, agent: false }, (answer) => {
      answer.resume();
      done(answer.statusCode ?? 0);
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

  it.each(['/%zz', '/%00', '/../package.json', '/%2e%2e/package.json', '/..%2fpackage.json', '/nothing'])(
    'refuses %s and goes on',
    async (path) => {
      expect([400, 404]).toContain(await ask(path));
      expect(await ask('/')).toBe(200);
    },
  );

  it('takes nothing', async () => {
    expect(await ask('/', 'POST')).toBe(404);
  });
});
