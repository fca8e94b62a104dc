/** The page and the terminal: the same replies, the same papers, the same answer. */

import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { FieldKey, Replies } from '../../../desk/new/field.ts';
import { filesOf } from '../../../desk/new/files.ts';
import { grow } from '../../../desk/new/make.ts';
import { fieldOf } from '../../../desk/new/questions.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { readOuting } from '../../../papers/index.ts';
import { heedway } from '../../support/cli.ts';
import { factOf } from '../../support/facts.ts';

const replies: Replies = {
  'engine.kind': 'petrol',
  'engine.gauge': '7-1/4',
  'engine.weight': '520 lb',
  'engine.pull': '120',
  'engine.brake': '70',
  'engine.holds': 'no',
  'engine.parks': '40',
  'cars.count': '2',
  'cars.weight': '140',
  'cars.brake': 'none',
  'people.adults': '3',
  'people.children': '1',
  'line.grade': '1 in 60',
  'line.curve': '55',
  'line.rail': 'damp',
};
/** Nothing is reckoned of it, and so it is quick. */
const { 'engine.brake': _, ...unsure } = replies;
const folder = mkdtempSync(join(tmpdir(), 'new-'));
const flags = (of: Replies): string[] =>
  Object.entries(of).flatMap(([key, text]) => [`--${fieldOf(key as FieldKey).flag}`, text]);

it('gives the same answer on the page and on the terminal', async () => {
  const { paper } = grow(replies, 'imperial');
  const page = await readOuting({ path: 'page', content: JSON.stringify(paper) }, async () => undefined);
  if (!page.ok || !paper) throw new Error('not read');
  const answer = answerOuting(page.value, { remedies: false });

  const own = join(folder, 'own');
  const ran = heedway('new', own, ...flags(replies), '--no-remedies');
  expect(ran.stderr).toBe('');
  for (const { path, text } of filesOf(paper)) expect(readFileSync(join(own, path), 'utf8')).toBe(text);
  const checked = heedway('check', join(own, 'outing.json'), '--json', '--no-remedies');
  expect(checked.status).toBe(ran.status);
  const told = JSON.parse(checked.stdout);
  expect(told.findings.map((f: { code: string; margin?: number }) => [f.code, f.margin])).toEqual(
    answer.findings.map((f) => [f.code, f.margin]),
  );
  // What a shape gave is listed with what was assumed; what was typed is not.
  const assumed = answer.findings.filter((f) => f.severity === 'assumed').map((f) => factOf(f, 'key'));
  expect(assumed).toContain('written/vehicle.axleGroups.at');
  expect(assumed).not.toContain('written/vehicle.tare');
});

it('says at once what a check of its files says, what to do next and all', () => {
  const steep = join(folder, 'steep');
  const ran = heedway(
    'new',
    steep,
    ...flags({ ...replies, 'cars.count': '1', 'people.adults': '2', 'line.grade': '1 in 25' }),
  );
  const screen = heedway('check', join(steep, 'outing.json')).stdout.trimEnd();
  expect(screen).toContain('→ ');
  expect(ran.stdout.slice(0, screen.length)).toBe(screen);
});

it('writes over nothing unless it is told to', () => {
  const there = join(folder, 'there');
  heedway('new', there, ...flags(unsure));
  writeFileSync(join(there, 'line.json'), 'mine');
  const again = heedway('new', there, ...flags(unsure));
  expect(again.status).toBe(2);
  expect(again.stderr).toContain('--force');
  expect(readFileSync(join(there, 'line.json'), 'utf8')).toBe('mine');
  expect(heedway('new', there, ...flags(unsure), '--force').status).not.toBe(2);
  expect(readFileSync(join(there, 'line.json'), 'utf8')).not.toBe('mine');
});

it('says what to measure, and writes nothing, while nothing can be reckoned', () => {
  const empty = join(folder, 'empty');
  const ran = heedway('new', empty, '--engine', 'steam');
  expect(ran.status).toBe(30);
  expect(ran.stdout).toContain('CANNOT TELL');
  expect(ran.stdout).toContain('--engine-weight');
  expect(existsSync(empty)).toBe(false);
  const odd = heedway('new', empty, '--engine-weight', 'plenty');
  expect(odd.status).toBe(2);
  expect(odd.stderr).toContain('--engine-weight: found "plenty"');
});

it('names the field of the file for what it asks', () => {
  const own = join(folder, 'unsure');
  expect(heedway('new', own, ...flags(unsure)).status).toBe(30);
  const { stdout } = heedway('check', join(own, 'outing.json'), '--why', '--no-remedies');
  expect(stdout).toContain(`${join(own, 'engine.json')}: brakes[0].force`);
});

it('asks of a survey that names no unit, as the page does, and says what it found in it', () => {
  const file = join(folder, 'orchard.csv');
  writeFileSync(file, 'Chainage,Height\n0,0\n100,1\n200,2.1\n300,1\n400,0.2\n');
  const { 'line.grade': _grade, ...rest } = unsure;
  const of = (...more: string[]) =>
    heedway('new', join(folder, 'surveyed'), ...flags(rest), '--line', file, '--force', ...more);
  const refused = of();
  expect(refused.status).toBe(2);
  expect(refused.stderr).toContain('Say --lengths ft or --lengths m.');
  expect(of('--lengths', 'yd').stderr).toContain('--lengths: found yd; expected ft or m');
  const [feet, metres] = ['ft', 'm'].map((unit) => of('--lengths', unit).stdout);
  expect(feet).toContain('- 400 ft end to end, 5 heights, 0 curves, 0 places.');
  expect(metres).toContain('- 1312 ft end to end, 5 heights, 0 curves, 0 places.');
  const made = () => JSON.parse(readFileSync(join(folder, 'surveyed/line.json'), 'utf8'));
  expect(made()).toMatchObject({ name: 'orchard', shape: 'point-to-point' });
  // What the page has a button for has a flag, and says which.
  expect(metres).toContain('- Do its ends meet? --shape loop');
  expect(of('--lengths', 'm', '--shape', 'loop').stdout).toContain('--shape point-to-point');
  expect(made().shape).toBe('loop');
  const own = heedway('survey', file, '--lengths', 'm', '--shape', 'ring');
  expect(own.stderr).toContain('--shape: found ring; expected loop or point-to-point');
  const bends = heedway('survey', file, '--lengths', 'm', '--bends', 'up');
  expect(bends.stderr).toContain('--bends: found up; expected left or right');
});
