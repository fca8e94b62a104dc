/** Where the output goes: a place that cannot be written, a reader that stops reading; and what it was made with. */
import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { heedway } from '../../support/cli.ts';

const root = new URL('../../../', import.meta.url).pathname;
const outing = 'examples/steam-light.json';

describe('a place that cannot be written', () => {
  it.each([
    ['bundle', '--out', '/nowhere/at/all.json', 'no such folder'],
    ['bundle', '--out', 'examples', 'a folder'],
    ['speeds', '--svg', '/nowhere/strip.svg', 'no such folder'],
  ])('%s %s %s is a fault of what was typed', (command, option, path, reason) => {
    const { status, stderr } = heedway(command, outing, option, path);
    expect(status).toBe(2);
    expect(stderr).toBe(`${path}: found ${reason}; expected a file that can be written\n`);
  });
});

it('a reader that stops reading ends it quietly', async () => {
  const child = spawn(
    process.execPath,
    ['dist/cli/heedway.mjs', 'check', outing, '--json', '--no-remedies'],
    {
      cwd: root,
    },
  );
  child.stdout.destroy();
  let said = '';
  child.stderr.on('data', (text) => {
    said += text;
  });
  await new Promise((done) => child.once('close', done));
  expect(said).toBe('');
});

it('an answer as JSON says what it was reckoned with', () => {
  const { versions } = JSON.parse(heedway('check', outing, '--json', '--no-remedies').stdout);
  const { version } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
  expect(versions).toEqual({
    program: version,
    schema: expect.any(Number),
    data: expect.stringMatching(/^[0-9a-f]{12}$/),
  });
  expect(heedway('--version').stdout.trim()).toBe(version);
});

describe('who always writes in metric, or reads UK words', () => {
  const sum = (set: Record<string, string>, ...options: string[]) =>
    spawnSync(
      process.execPath,
      ['dist/cli/heedway.mjs', 'sum', 'grade-force', 'mass=1000kg', 'grade=1%', ...options],
      {
        cwd: root,
        encoding: 'utf8',
        env: { ...process.env, ...set },
      },
    );
  it('says so once for all', () => {
    expect(sum({}).stdout).toContain('lb');
    expect(sum({ HEEDWAY_UNITS: 'metric' }).stdout).toBe(sum({}, '--units', 'metric').stdout);
    expect(sum({ HEEDWAY_UNITS: 'metric' }, '--units', 'imperial').stdout).toBe(sum({}).stdout);
  });
  it('and is told where that cannot be', () => {
    const { status, stderr } = sum({ HEEDWAY_UNITS: 'metrical' });
    expect(status).toBe(2);
    expect(stderr).toBe('--units, or HEEDWAY_UNITS: found metrical; expected imperial or metric\n');
  });
});
