/** The command line: an incident, a limit that every outing heeds until it is lifted, and what is removed. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { heedway, type Ran } from '../../support/cli.ts';

const store = join(mkdtempSync(join(tmpdir(), 'club-')), 'club.records');
const at = (...args: string[]): Ran => heedway(...args, '--records', store);
const outing = 'examples/steam-light.json';
const recordOf = ({ stdout, stderr }: Ran): string =>
  /Recorded\s+as\s+(\w{8})/.exec(stdout)?.[1] ?? `none: ${stdout}${stderr}`;

it('what happened is asked for as facts; a limit limits, a closure holds, each until it is lifted and why', () => {
  expect(at('records', 'begin', '--name', 'An Invented Person').status).toBe(0);
  const say = (facts: string, ...more: string[]): Ran =>
    at('incident', 'record', 'derailment', facts, '--outing', outing, ...more);
  expect(say('the driver was careless').stderr).toContain('“careless”');
  expect(say('off at the frog', '--vehicle', 'No such car').stderr).toContain('Nothing was recorded');
  expect(say('off at the frog', '--at', '9000 ft').stderr).toContain('beyond the end');
  const happened = recordOf(
    say('off at the frog', '--place', 'Larkfield', '--saw', 'Another Invented Person'),
  );
  expect(happened).toMatch(/^\w{8}$/);

  // Nobody said which vehicle: the line waits until somebody has gone through it.
  const off = at('check', outing, '--no-remedies');
  expect([off.status, off.stdout.replace(/\s+/g, ' ')]).toEqual([
    20,
    expect.stringContaining('Rejected: Larkfield Hollow, something left the rails'),
  ]);
  expect([at('inspect', 'defects').status, at('inspect', 'defects').stdout]).toEqual([
    20,
    expect.stringContaining('left the rails'),
  ]);
  const gone = ['inspect', 'record', 'after-derailment', '--of', 'Larkfield Hollow', '--right', 'rest'];
  expect(at(...gone).status).toBe(0);
  expect(at('inspect', 'defects').status).toBe(0);

  const limit = (...more: string[]): Ran =>
    at('incident', 'limit', 'frog wide', '--outing', outing, '--from', '20 ft', '--to', '90 ft', ...more);
  expect(limit().stderr).toContain('--speed or --closed');
  expect(limit('--speed', '3 mph', '--closed').stderr).toContain('--speed or --closed');
  const slow = limit('--speed', '3 mph', '--because', happened);
  expect(slow.status).toBe(10);
  const shut = limit('--closed');
  expect([shut.status, at('incident', 'limits').status]).toEqual([20, 20]);
  const held = at('check', outing, '--no-remedies');
  expect([held.status, held.stdout.replace(/\s+/g, ' ')]).toEqual([
    20,
    expect.stringMatching(/line is shut from 20 ft to 90 ft: frog wide.*no faster than 3\.0 mph, frog wide/),
  ]);
  expect(at('incident', 'lift', happened, 'x').stderr).toContain('expected restriction');
  expect(at('incident', 'lift', recordOf(shut), 'frog mended', '--by', 'An Invented Person').status).toBe(0);
  expect(at('incident', 'lift', recordOf(shut), 'again').stderr).toContain('that is lifted');
  expect(at('incident', 'limits').status).toBe(10);
  expect(at('incident', 'lift', recordOf(slow), 'frog mended').status).toBe(0);
  expect(at('incident', 'limits').status).toBe(0);

  const todo = recordOf(at('incident', 'measure', happened, 'gauge all frogs', '--by', '2026-06-01'));
  expect(at('incident', 'list').status).toBe(10);
  expect(at('incident', 'done', todo, 'all gauged').status).toBe(0);
  expect(at('incident', 'done', todo, 'twice').stderr).toContain('is done');
  const listed = at('incident', 'list');
  expect([listed.status, listed.stdout]).toEqual([
    0,
    expect.stringContaining('done: gauge all frogs (all gauged)'),
  ]);
  expect(at('incident', 'patterns').stdout).toContain('1 derailment in no recorded runs.');

  const about = JSON.parse(at('records', 'person', 'Another Invented Person', '--json').stdout);
  expect(about.records.map((one: { kind: string }) => one.kind)).toEqual(['incident']);
  expect(at('records', 'keep', 'incident', 'a while', '--source', 'rule').stderr).toContain(
    '"30 days" or "3 years"',
  );
  expect(at('records', 'keep', 'incident', '3 years', '--source', 'rule').status).toBe(0);
  expect(at('records', 'ended').status).toBe(0);
  expect(at('records', 'remove').stdout).toContain('Nothing has reached its end');
  expect(at('records', 'strike', 'Another Invented Person').status).toBe(0);
  expect(at('verify').stdout).toContain('all as they were written');
});
