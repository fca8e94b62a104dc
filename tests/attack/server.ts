/** Requests to the page server that no browser would send: it answers on, and gives nothing outside its folder. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Chance, changedText } from './mutate.ts';
import type { Outcome } from './targets.ts';

const { serve } = (await import('../../scripts/serve.mjs' as string)) as {
  serve: (
    folder: string,
    port: number,
  ) => Promise<{ readonly url: string; readonly close: () => Promise<void> }>;
};

const SECRET = 'not for the world';
const PAGE = 'the page';
const paths = [
  '/',
  '/index.html',
  '/assets/a.js',
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/out.txt',
  '/..%2fsecret.txt',
  '/assets/../../secret.txt',
  '/%00',
  '//secret.txt',
];

/** All that comes back; nothing, where the server waits for the rest of what was sent. */
const ask = (port: number, request: string, patience: number): Promise<string> =>
  new Promise((done) => {
    let heard = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(request, 'latin1'));
    socket.setTimeout(patience, () => socket.destroy());
    socket.on('data', (data) => {
      heard += data;
    });
    socket.on('error', () => {});
    socket.on('close', () => done(heard));
  });

const requestOf = (chance: Chance): string => {
  const path = chance.share() < 0.6 ? changedText(chance.one(paths), chance) : chance.one(paths);
  const method = chance.one(['GET', 'GET', 'GET', 'HEAD', 'POST', 'OPTIONS', 'X']);
  const host = chance.one(['localhost', 'localhost', '127.0.0.1:1', 'evil.example', '']);
  const whole = `${method} ${path} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`;
  return chance.share() < 0.2 ? changedText(whole, chance) : whole;
};

export async function attackServer(
  count: number,
  each: (request: (chance: Chance) => Promise<Outcome>) => Promise<void>,
): Promise<void> {
  const home = mkdtempSync(join(tmpdir(), 'served-'));
  const folder = join(home, 'pages');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(home, 'secret.txt'), SECRET);
  writeFileSync(join(folder, 'index.html'), PAGE);
  writeFileSync(join(folder, 'assets', 'a.js'), '1');
  symlinkSync(join(home, 'secret.txt'), join(folder, 'out.txt'));
  const server = await serve(folder, 0);
  const port = Number(new URL(server.url).port);
  for (let left = count; left > 0; left--)
    await each(async (chance) => {
      const heard = await ask(port, requestOf(chance), 50);
      if (heard.includes(SECRET)) return { end: 'accepted', crash: 'a file from outside the folder' };
      return { end: heard.startsWith('HTTP/1.1 200') ? 'accepted' : 'refused' };
    });
  await each(async () => {
    const heard = await ask(port, 'GET / HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n', 2000);
    return heard.includes(PAGE) ? { end: 'accepted' } : { end: 'refused', crash: 'the server is gone' };
  });
  await server.close();
  rmSync(home, { recursive: true, force: true });
}
