/** heedway measure: what is said, what is written where, and that what cannot be read ends with 2 and words. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { testKinds } from '../../../desk/measured/guide.ts';
import { heedway, heedwayOnce } from '../../support/cli.ts';
import { pdfText } from '../../support/pdf-text.ts';
import { runs } from '../../support/tier.ts';

const folder = mkdtempSync(join(tmpdir(), 'measure-'));
const at = (name: string): string => join(folder, name);
const tilt = 'examples/tests/tilt.json';
const outing = 'examples/battery-vacuum.json';

describe('a test applied and taken back', () => {
  it('is written into the one vehicle, kept, and gone again', () => {
    const to = at('applied.json');
    const ran = heedway('measure', 'apply', tilt, outing, '--vehicle', 'car-2', '--out', to, '--json');
    expect(ran.status).toBe(0);
    const { written, before, now } = JSON.parse(ran.stdout);
    expect(written).toEqual(['car-2: centreHeight']);
    expect([before.verdict, now.verdict]).toEqual(['limits', 'limits']);
    expect(JSON.parse(heedway('measure', 'kept', to, '--json').stdout)).toMatchObject([
      { number: 1, kind: 'tilt', date: '2026-05-17' },
    ]);
    const back = heedway('measure', 'back', to, '1', '--out', at('back.json'));
    expect(back.stdout).toContain('is taken back');
    expect(JSON.parse(readFileSync(at('back.json'), 'utf8'))).not.toHaveProperty('tests');
    expect(heedway('measure', 'back', to, '2')).toMatchObject({ status: 2, stdout: '' });
  });
});

it('is written into a line by itself, and gone again', () => {
  const [line, to] = ['examples/lines/larkfield-hollow.json', at('line.json')];
  const ran = heedway(
    'measure',
    'apply',
    'examples/tests/curve-resistance.json',
    line,
    '--out',
    to,
    '--json',
  );
  expect(JSON.parse(ran.stdout).written).toEqual(['curveConstant']);
  heedway('measure', 'back', to, '1', '--out', at('line-back.json'));
  expect(JSON.parse(readFileSync(at('line-back.json'), 'utf8'))).toEqual(
    JSON.parse(readFileSync(line, 'utf8')),
  );
});

it('a test that says nothing says what would, and ends with 30', () => {
  const record = JSON.parse(readFileSync(tilt, 'utf8'));
  writeFileSync(
    at('one.json'),
    JSON.stringify({ ...record, test: { ...record.test, stopHeight: '0.7 in' } }),
  );
  const ran = heedway('measure', 'fit', at('one.json'));
  expect(ran).toMatchObject({ status: 30, stderr: '' });
  expect(ran.stdout).toContain('holds the vehicle up');
});

it('readings from a CSV, with what a row does not hold said beside it', () => {
  writeFileSync(at('pulls.csv'), 'force (lbf),way\n61,forward\n64,reverse\n60,forward\n65,reverse\n');
  const said = ['--outing', outing, '--vehicle', 'car-2', '--test', 'brake-pull', '--set', 'gear=hand screw'];
  const ran = heedway(
    'measure',
    'fit',
    at('pulls.csv'),
    ...said,
    '--date',
    '2026-05-17',
    '--out',
    at('pulls.json'),
  );
  expect(ran).toMatchObject({ status: 0, stderr: '' });
  expect(ran.stdout).toContain('Full retarding force');
  expect(heedway('measure', 'fit', at('pulls.json')).stdout).toBe(ran.stdout);
  const undated = heedway('measure', 'fit', at('pulls.csv'), ...said);
  expect(undated.status).toBe(2);
  expect(undated.stderr).toContain('--date');
});

it('a stop test is held against what the papers had said', () => {
  const ran = heedway('measure', 'check', 'examples/tests/stop-test.json', '--json');
  const { stops, inside, words } = JSON.parse(ran.stdout);
  expect(stops).toHaveLength(12);
  const kept = stops.filter((s: { measured: number; careful: number }) => s.measured <= s.careful);
  expect(inside).toBe(kept.length);
  expect(ran.status).toBe(inside === 12 ? 0 : 30);
  expect(words[0]).toContain(`${inside} of 12 stops were no longer than the careful figure`);
  expect(words[1]).toContain('with automatic vacuum alone');
  // As far as that brake alone stops it: with all of them a stop is a third shorter.
  for (const { measured, likely } of stops) expect(likely / measured).toBeGreaterThan(0.9);
  const record = JSON.parse(readFileSync('examples/tests/stop-test.json', 'utf8'));
  const [first, ...others] = record.test.stops;
  const far = { ...first, restAt: first.way === 'forward' ? '1100 ft' : '5 ft' };
  writeFileSync(
    at('far.json'),
    JSON.stringify({
      ...record,
      test: { ...record.test, stops: [far, ...others.slice(0, runs(3, 11))] },
    }),
  );
  const longer = heedway('measure', 'check', at('far.json'));
  expect(longer.status).toBe(30);
  expect(longer.stdout).toContain('LONGER than careful');
});

it('kept with the papers, a check is published without names, and read again', () => {
  const [to, sheet] = [at('checked.json'), at('sheet.csv')];
  const ran = heedway(
    'measure',
    'apply',
    'examples/tests/stop-test.json',
    outing,
    '--check-only',
    '--out',
    to,
  );
  expect(ran).toMatchObject({ status: 0, stderr: '' });
  const { record, words } = JSON.parse(heedway('measure', 'check', to, '--json').stdout);
  expect(record).toMatchObject({ tests: 1, stops: 12, inside: 12, kept: true, shown: false });
  expect(record.bounds[0]).toBeCloseTo(0.7354, 4);
  expect(words.join(' ')).toContain('between 73 % and 100 % of stops');
  expect(heedway('measure', 'share', to, '--out', sheet).stdout).toContain('One test, 12 rows');
  expect(readFileSync(sheet, 'utf8')).not.toMatch(/Bracken|member|straight|2026-05-\d/i);
  const shared = heedway('measure', 'shared', sheet, '--json');
  expect(JSON.parse(shared.stdout)).toMatchObject({ tests: 1, invented: 12, record: { stops: 12 } });
});

it('a log becomes a stop, and another is added to it', () => {
  const log = ['measure', 'log', 'examples/logs/stop-speeds.csv', '--way', 'forward', '--begin', '6'];
  const to = at('logged.json');
  const first = heedway(
    ...log,
    ...['--test', 'stop-test', '--from', '320 ft', '--date', '2026-05-17', '--rail', 'dry', '--out', to],
  );
  expect(first).toMatchObject({ status: 0, stderr: '' });
  expect(first.stdout).toContain('From 320 ft at 7.1 mph: at rest at 353 ft after 5.5 s.');
  heedway(...log, '--from', '340 ft', '--into', to, '--out', to);
  const { test, instruments } = JSON.parse(readFileSync(to, 'utf8'));
  expect(test.stops).toHaveLength(2);
  expect(Number.parseFloat(test.stops[1].restAt) - Number.parseFloat(test.stops[0].restAt)).toBeCloseTo(
    6.096,
    2,
  );
  expect(instruments).toEqual({ speedometer: 0.07, tape: 0.07 });
});

const bad = [
  [['guide', 'no-such'], 'expected coast-down'],
  [['fit', 'package.json'], 'expected a record'],
  [['fit', 'nowhere.json'], 'found no such file'],
  [['fit', tilt, '--vehicle', 'car-1'], 'expected with --outing'],
  [['fit', tilt, '--outing', outing, '--vehicle', 'caboose'], 'expected engine, car-1'],
  [['apply', tilt, outing], '--vehicle: found nothing'],
  [['apply', tilt, 'package.json'], 'expected an outing, a vehicle or a line'],
  [['back', outing, '1'], 'found no test that it keeps'],
  [['sheet', 'tilt', '--paper', 'a3'], 'expected a5 or half-letter'],
  [['log', 'examples/logs/stop-speeds.csv'], '--test: found nothing'],
  [['share', outing], 'found no test that is kept there'],
  [['shared', 'package.json'], 'found no data sheet'],
  [['apply', tilt, outing, '--vehicle', 'car-2', '--check-only'], 'expected a stop test'],
] as const;

it.each(bad)('%j: words and exit 2', (args, words) => {
  const ran = heedwayOnce('measure', ...args);
  expect(ran.status).toBe(2);
  expect(ran.stderr).toContain(words);
  expect(ran.stderr).not.toMatch(/\n {4}at /);
});

it.each(testKinds.slice(0, runs(2, testKinds.length)))('the sheet of a %s fits on three sides', (kind) => {
  for (const paper of ['a5', 'half-letter'].slice(0, runs(1, 2))) {
    const ran = heedway('measure', 'sheet', kind, '--paper', paper, '--out', at('sheet.pdf'), '--json');
    expect(ran.status).toBe(0);
    const { pages, text, boxes, right, width, sizes } = pdfText(readFileSync(at('sheet.pdf')));
    expect(pages).toBeLessThanOrEqual(3);
    expect(text).toContain('Steps');
    expect(boxes).toBe(0);
    expect(right).toBeLessThan(width);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(7);
  }
});
