/** The card on paper: nothing left out, nothing too small, nothing off the paper, no boxes, trials marked. */

import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Card, heeded } from '../../../desk/card.ts';
import { lettersOf } from '../../../desk/font-letters.ts';
import { gathered, tellGathered } from '../../../desk/gathered.ts';
import { outingIn } from '../../../desk/outing-code.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { changedExample } from '../../support/changed-examples.ts';
import { heedway, heedwayAlone } from '../../support/cli.ts';
import { examplePaper, manyPlaces, withCars } from '../../support/papers.ts';
import { type PdfText, pdfText } from '../../support/pdf-text.ts';

const folder = mkdtempSync(join(tmpdir(), 'card-'));

interface Printed extends PdfText {
  readonly status: number;
  readonly json: {
    readonly code: string | null;
    readonly tried: readonly string[];
    readonly verdict: string;
    readonly speeds: Card['speeds'];
  };
}

function printed(name: string, paper: unknown, size = 'half-letter'): Printed {
  const [file, pdf] = [join(folder, `${name}.json`), join(folder, `${name}.pdf`)];
  writeFileSync(file, JSON.stringify(paper));
  const ran = heedway('card', file, '--pdf', pdf, '--paper', size, '--json');
  if (ran.stdout === '') throw new Error(ran.stderr);
  return { status: ran.status, json: JSON.parse(ran.stdout), ...pdfText(readFileSync(pdf)) };
}

const plainly = (text: string): string => text.replace(/\s+/g, ' ');

function fitsThePaper({ sizes, right, width }: PdfText): void {
  expect(sizes.length).toBeGreaterThan(50);
  expect(Math.min(...sizes)).toBeGreaterThanOrEqual(7 - 1e-6);
  // The margin is 20 points.
  expect(right).toBeLessThanOrEqual(width - 19);
}

describe('all that the card has to say', () => {
  it.each([
    // Fourteen stations and the word fill two sides; the plan goes on to a third.
    ['half-letter', 3],
    ['a5', 3],
  ] as const)('goes on to the next side of %s where one does not hold it', async (size, sides) => {
    const card = printed(`places-${size}`, await manyPlaces(), size);
    for (let i = 1; i <= 14; i++) {
      expect(card.text).toContain(`brake for the stop at Station ${i} `);
    }
    // Limits that lie close together are driven as one zone.
    expect(card.json.speeds.length).toBeGreaterThanOrEqual(12);
    for (const { where, speed, posts, why } of card.json.speeds)
      expect(card.text).toContain(plainly(`${where} ${speed} ${posts} ${why} `));
    expect(card.pages).toBe(sides);
    // The plan, with its sharpest curve.
    expect(card.text).toMatch(/The line from above .*45 ft curve left/s);
    for (let side = 1; side <= card.pages; side++)
      expect(card.text).toContain(`GO WITHIN LIMITS · Sunday steam · 2026-05-31 ${side} of ${card.pages}`);
    fitsThePaper(card);
  });

  it('every finding that holds, is unknown or limits, in its number', async () => {
    const card = printed('hold', await examplePaper('too-long-wet'));
    const outing = await changedExample('too-long-wet', () => undefined);
    const voice = { system: 'imperial', wording: 'us', outing } as const;
    const { findings } = answerOuting(outing, { remedies: false, counts: false });
    const plain = (text: string): string => text.replace(/[\s-]/g, '');
    const heeds = gathered(findings).filter(({ finding }) => heeded(finding.severity));
    expect(heeds.length).toBeGreaterThanOrEqual(5);
    for (const [i, heed] of heeds.entries())
      expect(plain(card.text)).toContain(plain(`${i + 1} ${tellGathered(heed, voice)}`));
    expect(card.text).not.toContain('more: see');
    fitsThePaper(card);
  });

  it('sixty vehicles, every one by name', async () => {
    const card = printed('sixty', await withCars(59, []));
    expect(card.text).toContain('Fenwick: Driver ');
    expect(card.text.match(/Light car \d+: – · – · – · – /g)).toHaveLength(59);
    expect(card.text).toContain(`${card.pages} of ${card.pages}`);
    fitsThePaper(card);
  });

  it('names of two hundred letters stay on the paper', async () => {
    const long = (letter: string): string => letter.repeat(200);
    const paper = await withCars(2, [{ name: long('R'), typical: 'man', vehicle: 'car-1', seat: '1' }], {
      name: long('V'),
    });
    const line = paper['line'] as { places: { name: string }[] };
    line.places[0].name = long('P');
    const card = printed('long', { ...paper, name: long('N'), line: { ...line, name: long('L') } });
    fitsThePaper(card);
    for (const letter of ['N', 'L', 'V', 'R'])
      expect(card.text.split('').filter((l) => l === letter).length).toBeGreaterThanOrEqual(200);
  });
});

describe('names in any script', () => {
  it('print, or a word stands for them with the seat: never a box', async () => {
    const paper = await withCars(2, [
      { name: '王小明', typical: 'man', vehicle: 'car-1', seat: '2' },
      { name: 'Ольга Ιωάννα', typical: 'woman', vehicle: 'car-2', seat: '1' },
      { name: 'Anna 🚂 देवी', typical: 'woman', vehicle: 'car-2', seat: '2' },
    ]);
    const card = printed('scripts', { ...paper, name: '春の運転 Spring' });
    expect(card.boxes).toBe(0);
    expect(card.text).toContain('seat 2: name in letters that this paper cannot print: see the screen');
    expect(card.text).toContain('Ольга Ιωάννα');
    expect(card.text).toContain('Anna (letters that this paper cannot print: see the screen)');
    expect(card.text).toContain('(letters that this paper cannot print: see the screen) Spring');
  });

  it('are looked up in the font as its maker laid them down', () => {
    // A reader of fonts that shares nothing with ours; it comes with the maker of PDFs.
    const require = createRequire(import.meta.url);
    const other = createRequire(require.resolve('pdfmake'))('fontkit') as {
      openSync: (path: string) => { hasGlyphForCodePoint: (codePoint: number) => boolean };
    };
    for (const cut of ['DejaVuSansCondensed', 'DejaVuSansCondensed-Bold']) {
      const path = require.resolve(`dejavu-fonts-ttf/ttf/${cut}.ttf`);
      const [ours, theirs] = [lettersOf(readFileSync(path)), other.openSync(path)];
      let has = 0;
      for (let c = 0x20; c < 0x20000; c++) {
        if (ours(c)) has++;
        if (ours(c) !== theirs.hasGlyphForCodePoint(c)) throw new Error(`U+${c.toString(16)} in ${cut}`);
      }
      expect(has).toBeGreaterThan(4000);
    }
  });
});

describe('a trial', () => {
  const changes = [
    { kind: 'rail-state', state: 'sanded' },
    { kind: 'fewer-cars', leave: ['car-2'] },
  ];

  it('is marked on the card and in the answer, and its code carries it', async () => {
    const outing = await examplePaper('steam-light');
    const tried = { heedway: 'tried', version: 1, outing, changes };
    const card = printed('tried', tried);
    expect(card.json.tried).toEqual(['sand under the engine’s driving wheels', 'leave Light car 2 behind']);
    expect(card.text).toContain('Tried, not as its papers have it:');
    for (const change of card.json.tried) expect(card.text).toContain(change);
    expect(card.text).toContain('TRIED · ');

    const opened = await outingIn(card.json.code ?? '');
    expect('fault' in opened ? opened.fault : JSON.parse(Buffer.from(opened).toString())).toEqual(tried);
    const check = JSON.parse(heedway('check', join(folder, 'tried.json'), '--no-remedies', '--json').stdout);
    expect(check.tried).toEqual(card.json.tried);
    expect(check.answer).toBe(card.json.verdict);
    expect(heedway('check', join(folder, 'tried.json'), '--no-remedies').stdout).toContain('Tried, not as');
  });

  it('is refused by commands that would not say so', async () => {
    const ran = heedway('stop', join(folder, 'tried.json'), '--at', '100 ft', '--speed', '3 mph');
    expect(ran.status).toBe(2);
    expect(ran.stderr).toContain('heedway');
  });

  it('of a car that is not there is refused', async () => {
    const file = join(folder, 'stray.json');
    const outing = await examplePaper('too-long-wet');
    const stray = [{ kind: 'fewer-cars', leave: ['car-9'] }];
    writeFileSync(file, JSON.stringify({ heedway: 'tried', version: 1, outing, changes: stray }));
    const ran = heedway('check', file);
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(/changes\[0\]: found "car-9"/);
  });
});

it('is named after the outing and its day', () => {
  const ran = heedwayAlone('card', 'examples/steam-light.json', '--json', '--pdf', join(folder, 'x.pdf'));
  expect(ran.status).toBe(10);
  expect(heedway('card', '--help').stdout).toContain('named after the outing');
});

describe('a train that may not leave', () => {
  it.each([
    ['too-long-wet', 'it may not leave'],
    ['brake-not-measured', 'not until it is known'],
    ['steam-light', undefined],
  ])('%s: no gap to keep, and zones that nobody takes for leave to run', async (name, stays) => {
    const { text } = printed(`stays-${name}`, await examplePaper(name));
    expect(text.includes('Not to be run by')).toBe(stays !== undefined);
    if (stays === undefined) expect(text).toMatch(/gap to keep \d+ ft/);
    else {
      // Once, over all that it covers: the strip, the zones, the braking points.
      expect(text.split('Not to be run by').length).toBe(2);
      const said = text.indexOf(`Not to be run by: ${stays}.`);
      expect(said).toBeGreaterThan(0);
      for (const covered of ['drawn ×', 'from – to', 'Braking points'])
        expect(text.indexOf(covered), covered).toBeGreaterThan(said);
      expect(text).toContain(`gap to keep none: ${stays}`);
    }
  });

  it.each([
    ['too-long-wet', 'Not to be run by: it may not leave.'],
    ['brake-not-measured', 'Not to be run by: not until it is known.'],
    ['steam-light', ''],
  ])('%s: speeds in the terminal and in the drawing say so over all of it', (name, stays) => {
    const svg = join(folder, `${name}.svg`);
    const { stdout } = heedway('speeds', `examples/${name}.json`, '--svg', svg);
    const drawn = readFileSync(svg, 'utf8');
    expect(JSON.parse(heedway('speeds', `examples/${name}.json`, '--json').stdout).notToRun).toBe(stays);
    const told = drawn.replace(/<(title|desc)>.*?<\/\1>/gs, '');
    const letters = [...told.matchAll(/<text[^>]* y="([\d.]+)"[^>]*>([^<]*)/g)].map(
      ([, y, text]) => [Number(y), text] as const,
    );
    expect(letters.length).toBeGreaterThan(10);
    if (stays === '') {
      expect(stdout).not.toContain('Not to be run by');
      expect(drawn).not.toContain('Not to be run by');
      return;
    }
    expect(stdout.startsWith(`${stays}\n`)).toBe(true);
    const [[top, first], [next]] = [...letters].sort(([a], [b]) => a - b);
    expect(first).toBe(stays);
    // A line of its own: what comes next stands a whole letter lower.
    expect(next - top).toBeGreaterThan(13);
  });
});
