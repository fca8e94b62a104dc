/** What is no file of a railway: a word that names it, at once; and nothing outside the folder of the first file is read. */
import { execFileSync, spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { UsageFault } from '../../../cli/command.ts';
import { reasonOf } from '../../../cli/file.ts';
import { openFile, openOutingFile } from '../../../cli/open.ts';
import { authorHere, beginStore, inStore } from '../../../cli/records.ts';
import { writeOut } from '../../../cli/write.ts';

const folder = mkdtempSync(join(tmpdir(), 'strange-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const said = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => 'read',
    (fault: unknown) => {
      expect(fault).toBeInstanceOf(UsageFault);
      return (fault as Error).message;
    },
  );

describe('what is no ordinary file', () => {
  const pipe = join(folder, 'pipe');
  execFileSync('sh', ['-c', 'mkfifo "$0"', pipe]);
  it.each([
    [pipe, 'a pipe or device'],
    ['/dev/zero', 'a pipe or device'],
    ['/dev/null', 'a pipe or device'],
    [folder, 'a folder'],
    [join(folder, 'nowhere'), 'no such file'],
    [join(folder, 'x'.repeat(300)), 'a name that is too long'],
  ])('%s', async (path, found) => {
    expect(await said(openFile(path))).toMatch(new RegExp(`^${path}: found ${found}; expected `));
  });

  it.each([
    [pipe, 'a pipe or device'],
    ['/dev/zero', 'a pipe or device'],
    [folder, 'a folder'],
  ])('%s as a store of records', async (records, found) => {
    const opened = inStore({ records }, async () => 'opened');
    expect(await said(opened)).toMatch(
      new RegExp(`^${records}: found ${found}; expected a store of records`),
    );
  });

  it('a pipe into which nobody writes, where the key of a store should be', async () => {
    execFileSync('sh', ['-c', 'mkfifo "$0"', `${pipe}.key`]);
    expect(await said(authorHere({ records: pipe }))).toMatch(/found no key that can be read/);
  });

  it.each(['', '.key'])('nothing is put over a store of records%s', async (end) => {
    const records = join(folder, `club${end}.records`);
    await beginStore({ records });
    const before = readFileSync(records + end);
    expect(await said(writeOut(records + end, 'a card'))).toContain('nothing is put over it');
    expect(readFileSync(records + end)).toEqual(before);
  });

  it('standard input into which nobody writes', async () => {
    const child = spawn(process.execPath, ['dist/cli/heedway.mjs', 'check', '/dev/stdin']);
    let told = '';
    child.stderr.on('data', (text) => {
      told += text;
    });
    expect(await new Promise((done) => child.once('close', done))).toBe(2);
    expect(told).toMatch(/^\/dev\/stdin: found a .*; expected a[n ].*file/);
  });

  it('no more handles are said as such', () => {
    expect(reasonOf({ code: 'EMFILE' })).toBe('too many files open already');
    expect(reasonOf({ code: 'EIO' })).toContain('EIO');
  });

  it('and are when there are none left', () => {
    const hoard = `
      import { openSync, writeSync } from 'node:fs';
      import { contentOf } from './cli/file.ts';
      await contentOf('package.json');
      try { for (;;) openSync('/dev/null', 'r'); } catch {}
      writeSync(1, JSON.stringify(await contentOf('package.json')));`;
    const line = 'ulimit -n 128; exec "$0" "$@"';
    const given = [process.execPath, '--import', 'tsx', '--input-type=module', '-e', hoard];
    const told = execFileSync('sh', ['-c', line, ...given], { encoding: 'utf8' });
    expect(JSON.parse(told)).toEqual({
      unread: 'too many files open already',
      expected: 'a file that can be read',
    });
  });
});

describe('a part in a file of its own', () => {
  const club = join(folder, 'club');
  const elsewhere = join(folder, 'elsewhere');
  cpSync('examples', club, { recursive: true });
  mkdirSync(elsewhere);
  writeFileSync(join(elsewhere, 'line.json'), 'secret');
  symlinkSync(join(elsewhere, 'line.json'), join(club, 'lines', 'out.json'));
  symlinkSync(elsewhere, join(club, 'away'));
  symlinkSync(join(club, 'lines', 'larkfield-hollow.json'), join(club, 'lines', 'again.json'));
  execFileSync('sh', ['-c', 'mkfifo "$0"', join(club, 'lines', 'pipe.json')]);
  const withLine = (file: string): Promise<string> => {
    const path = join(club, 'asked.json');
    writeFileSync(
      path,
      JSON.stringify({ ...JSON.parse(readFileSync(join(club, 'steam-light.json'), 'utf8')), line: { file } }),
    );
    return said(openOutingFile(path));
  };

  it('is read through a link that stays inside', async () => {
    expect(await withLine('lines/again.json')).toBe('read');
  });

  it.each([
    ['../elsewhere/line.json', /a path within the folder of the first file/],
    [join(elsewhere, 'line.json'), /a path within the folder of the first file/],
    ['lines/out.json', /a link that leads out of the folder of the first file/],
    ['away/line.json', /a link that leads out of the folder of the first file/],
    ['lines/pipe.json', /a pipe or device/],
    ['lines', /a folder/],
  ])('%s is refused with the reason, and not a letter of it is told', async (file, reason) => {
    const told = await withLine(file);
    expect(told).toMatch(/line\.file: found /);
    expect(told).toMatch(reason);
    expect(told).not.toContain('secret');
  });
});
