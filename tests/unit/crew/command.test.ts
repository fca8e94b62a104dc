/** The command line: who is over, who could, hours from turns that were recorded, and the board. */
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { heedway, type Ran } from '../../support/cli.ts';
import { examplePaper } from '../../support/papers.ts';

const folder = mkdtempSync(join(tmpdir(), 'crew-'));
const store = join(folder, 'club.records');
const at = (...args: string[]): Ran => heedway(...args, '--records', store);

it('heedway crew: who is over holds, and who could is named; turns that were recorded count', async () => {
  const crew = heedway('crew', 'examples/late-turn.json');
  expect(crew.status).toBe(20);
  expect(crew.stdout).toMatch(/B\. Rowan +stands by; could: driver/);
  expect(crew.stdout).toMatch(/C\. Alder +stands by +driver competence to 2027-03-31 \(battery or wire\)/);
  expect(crew.stdout).toContain('on duty for 10 h 30 min when this outing is over; the host allows 10 h');

  const paper = await examplePaper('late-turn');
  const list = (paper['crew'] as readonly { readonly name: string }[]).map(({ name }) =>
    name === 'A. Larch' ? { name, sober: true, fit: true } : { name },
  );
  const outing = join(folder, 'outing.json');
  writeFileSync(outing, JSON.stringify({ ...paper, crew: list }));
  expect(at('records', 'begin', '--name', 'An Invented Person').status).toBe(0);
  const turn = (what: string, said: string, ...more: string[]): Ran =>
    at('crew', 'turn', what, '--person', 'A. Larch', '--said', said, ...more);
  expect(turn('off', '2026-05-31T09:00').stderr).toContain('not signed on');
  expect(turn('on', '2026-05-31T09:00', '--free-since', '2026-05-20T18:00').status).toBe(0);
  const counted = at('crew', outing);
  expect(counted.stdout).toMatch(
    /A\. Larch +drives .* on duty 9 h 30 min, since a break 9 h 30 min, rest before/,
  );
  expect(counted.stdout).toContain(
    '9 h 30 min without a break when this outing is over; the host allows 5 h',
  );
});

it('heedway board: to read, and as a PDF', () => {
  const pdf = join(folder, 'board.pdf');
  const board = heedway('board', 'examples/late-turn.json', '--pdf', pdf, '--paper', 'a4');
  expect([board.status, board.stdout]).toEqual([
    0,
    expect.stringContaining('Read aloud (80 words, half a minute'),
  ]);
  expect(existsSync(pdf)).toBe(true);
  expect(heedway('board', 'examples/late-turn.json', '--paper', 'a3').status).toBe(2);
});
