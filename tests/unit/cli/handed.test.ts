/** What was handed over opens on the command line as its own file does: a card's PDF, a code, a link; a survey is asked. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { carried } from '../../../desk/carried.ts';
import { handed } from '../../../desk/outing-code.ts';
import { readSurvey } from '../../../desk/survey.ts';
import { heedway } from '../../support/cli.ts';
import { examplePaper } from '../../support/papers.ts';
import { pdfText } from '../../support/pdf-text.ts';

const folder = mkdtempSync(join(tmpdir(), 'handed-'));
const at = (name: string, content: string): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};

describe('the cards of several trains', () => {
  const pdf = join(folder, 'day.pdf');
  const made = heedway('card', 'examples/steam-light.json', 'examples/battery-vacuum.json', '--pdf', pdf);

  it('are one PDF, each on sides of its own, with the outings in it', async () => {
    expect(made.status).toBe(10);
    expect(made.stdout).toContain('Running card of Sunday steam');
    const { text, pages } = pdfText(readFileSync(pdf));
    expect(pages).toBeGreaterThanOrEqual(2);
    expect(text).toContain('Sunday steam · 2026-05-31 1 of');
    expect(text).toContain(`Members’ evening · 2026-05-31 ${pages} of ${pages}`);
    const inside = await carried(readFileSync(pdf));
    const names = Array.isArray(inside)
      ? inside.map((one) => JSON.parse(Buffer.from(one).toString()).name)
      : inside;
    expect(names).toEqual(['Sunday steam', 'Members’ evening']);
  });

  it('open one at a time', () => {
    const { status, stderr } = heedway('check', pdf);
    expect([status, stderr]).toEqual([2, expect.stringContaining('the cards of 2 trains')]);
  });
});

describe('an outing that was handed over', () => {
  it('is bundled from a PDF, a code and a link as from its file', async () => {
    const paper = await examplePaper('steam-light');
    const made = handed(paper);
    const files = [
      at('code.txt', made?.codes[0] ?? ''),
      at('link.txt', `https://example.org/#${made?.fragment}\n`),
      at('card.pdf', `%PDF-1.3\n/Keywords (#${made?.fragment})`),
    ];
    // Whoever was sent one pastes it: there is no file yet.
    const pasted = [made?.codes[0] ?? '', `https://example.org/#${made?.fragment}`];
    for (const one of [...files, ...pasted]) expect(JSON.parse(heedway('bundle', one).stdout)).toEqual(paper);
    expect(heedway('open', pasted[1]).stdout).toMatch(/^the code: the outing Sunday steam/);
    const { status, stderr } = heedway('check', 'HEEDWAY:2:ABC');
    expect([status, stderr]).toEqual([2, expect.stringContaining('the code: The code is broken')]);
  });

  it('is refused in words where a PDF carries none', () => {
    const { status, stderr } = heedway('check', at('letter.pdf', '%PDF-1.3 a letter'));
    expect([status, stderr]).toEqual([2, expect.stringContaining('carries no outing')]);
  });
});

describe('open', () => {
  it.each([
    ['examples/vehicles/granite.json', 'a vehicle, Granite.'],
    ['examples/surveys/branch.gpx', 'a survey of a line.'],
    [
      'examples/steam-light.json',
      'the outing Sunday steam: Fenwick with two light cars on Larkfield Hollow (an invented example).',
    ],
  ])('%s is said to be what it is', (file, words) => {
    const { status, stdout } = heedway('open', file);
    expect(status).toBe(0);
    expect(stdout).toContain(`${file}: ${words}`);
  });
});

describe('a survey whose header does not say', () => {
  const bare = 'Chainage,Height\n0,0\n100,1\n';
  const about = { name: 'x', gauge: '5 in' };

  it('asks, and is read in what is said', async () => {
    expect((await readSurvey(bare, 'a.csv', about)).asksLengths).toBe(true);
    expect((await readSurvey(bare, 'a.csv', { ...about, lengths: 'm' })).made?.line.length).toBeCloseTo(
      100,
      6,
    );
    expect((await readSurvey(bare, 'a.csv', { ...about, lengths: 'ft' })).made?.line.length).toBeCloseTo(
      30.48,
      6,
    );
    // A header that says stands.
    const said = bare.replace('Chainage', 'Chainage (ft)');
    expect((await readSurvey(said, 'a.csv', { ...about, lengths: 'm' })).made?.line.length).toBeCloseTo(
      30.48,
      6,
    );
    expect((await readSurvey('Chainage,Height\n0,x\n', 'a.csv', about)).made).toBeUndefined();
    const { stderr } = heedway('survey', at('bare.csv', bare));
    expect(stderr).toContain('--lengths ft or --lengths m');
  });
});
