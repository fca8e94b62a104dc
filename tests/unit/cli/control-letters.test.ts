/** A name is never obeyed: not by the terminal, not by a drawing. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sax from 'sax';
import { afterAll, describe, expect, it } from 'vitest';
import { plain } from '../../../engine/base/letters.ts';
import { readOuting } from '../../../papers/index.ts';
import { drawing, sceneToSvg, textShape } from '../../../views/strip/scene.ts';
import { heedway } from '../../support/cli.ts';
import { examplePaper } from '../../support/papers.ts';

const folder = mkdtempSync(join(tmpdir(), 'letters-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Escape, control sequence, operating system command, backspace, return, line break, override, isolate. */
const orders = [
  '\u001b[2J\u001b[1;32mGO',
  '\u009b8m',
  '\u001b]0;x\u0007',
  'a\bb',
  'a\rGO',
  'a\nGO',
  '\u202eOG',
  '\u2066x',
];
const obeyed = /(?![\n])[\p{Cc}\u2028-\u202e\u2066-\u2069]/u;

describe('a letter that is obeyed', () => {
  it.each(orders)('in a name (%j) is refused, and the refusal does not obey it', async (name) => {
    const paper = await examplePaper('steam-light');
    const read = await readOuting(
      {
        path: 'x',
        content: JSON.stringify({ ...paper, name, riders: [{ ...(paper['riders'] as object[])[0], name }] }),
      },
      async () => undefined,
    );
    const told = read.ok ? [] : read.problems.map((p) => p.message);
    expect(told[0]).toMatch(/^name: found .*; expected one line of text without control letters$/);
    expect(told.join()).not.toMatch(obeyed);
  });

  it('in what a file says elsewhere, or in its path, does not reach the terminal', async () => {
    const path = join(folder, 'x\u001b[2J\u202e.json');
    const paper = await examplePaper('steam-light');
    const host = paper['host'] as Record<string, unknown>;
    writeFileSync(
      path,
      JSON.stringify({
        ...paper,
        host: { ...host, maxSpeed: { value: '1 mph', source: 'a\u001b[8m\u009b1m\u202e' } },
      }),
    );
    for (const asked of [
      ['check', path, '--why', '--all', '--no-remedies'],
      ['check', path, '--json', '--no-remedies'],
      ['check', `${path}x`],
      ['check', path, '--\u001b[2J'],
    ]) {
      const { stdout, stderr } = heedway(...asked);
      expect(stdout + stderr).toMatch(/\\u(001b|202e)/);
      expect(stdout + stderr).not.toMatch(obeyed);
      if (asked[2] === '--json') expect(stdout).not.toBe('');
      if (asked[2] === '--json') expect(JSON.stringify(JSON.parse(stdout))).toContain('\u202e');
    }
  });

  it('in a drawing is written out, and tags are text', () => {
    const name = `${orders.join('')}</text><script>alert(1)</script><image href="x"/>"' onload="x`;
    const svg = sceneToSvg(drawing(10, 10, name, [textShape('paper' as never, 0, 0, name, 3)]));
    const tags: string[] = [];
    const reader = sax.parser(true, {});
    reader.onopentag = ({ name: tag, attributes }) => tags.push(`${tag} ${Object.keys(attributes).length}`);
    // As any strict reader: what is not well-formed is thrown.
    reader.write(svg).close();
    expect(tags).toEqual(['svg 6', expect.stringMatching(/^text /)]);
    expect(svg).not.toMatch(obeyed);
    expect(plain('Łódź — 蒸気 \t שלום')).toBe('Łódź — 蒸気 \t שלום');
  });
});
