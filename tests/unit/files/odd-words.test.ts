/** Words that a machine's own tables answer to, days that no calendar has, and papers of another program's. */
import { expect, it } from 'vitest';
import { fieldRows } from '../../../desk/evidence/fields.ts';
import { readOuting } from '../../../papers/index.ts';
import { checkContent } from '../../../papers/record/check.ts';
import { bodyIn } from '../../../records/record.ts';
import { parseQuantity } from '../../../units/index.ts';
import { examplePaper } from '../../support/papers.ts';

type Json = Record<string, unknown>;

it.each(['26 __proto__', '26__proto__0 lb', '3 constructor', '3 valueOf'])(
  '%s is refused in words',
  (text) => {
    const read = parseQuantity(text, 'mass');
    expect(read.ok ? 'read' : read.problem.expected).toMatch(/^a mass such as /);
  },
);

it('a record of a kind that only the machine knows is none', () => {
  const body = {
    author: 'a',
    content: {},
    device: 'd',
    heedway: 'record',
    kind: 'note',
    number: 1,
    program: '0',
    said: '2026-05-31T10:00:00Z',
    stored: '2026-05-31T10:00:00Z',
    version: 1,
  };
  expect(bodyIn(JSON.stringify(body))).toBeDefined();
  expect(bodyIn(JSON.stringify({ ...body, kind: 'toString' }))).toBeUndefined();
});

it('a part that is left out is asked for in words', async () => {
  const { line: _l, ...paper } = (await examplePaper('steam-light')) as Json;
  const got = await readOuting({ path: 'o', content: JSON.stringify(paper) }, async () => undefined);
  const [first] = got.ok ? [] : got.problems;
  expect(first).toMatchObject({
    path: 'line',
    found: 'nothing',
    expected: 'it there, or {"file": "path of a file"}',
  });
});

it('a day that no calendar has is refused, told once', async () => {
  const paper = (await examplePaper('steam-light')) as Json;
  const read = async (more: Json) => {
    const content = JSON.stringify({ ...paper, ...more });
    const got = await readOuting({ path: 'o', content }, async () => undefined);
    return got.ok ? [] : got.problems.map(({ path, expected }) => [path, expected]);
  };
  expect(await read({ date: '2028-02-29' })).toEqual([]);
  for (const date of ['2026-02-29', '2026-02-30', '2026-13-01', '31 May'])
    expect(await read({ date })).toEqual([['date', 'a day such as 2026-05-31']]);
  for (const back of ['2026-02-30T10:00', '2026-05-31T24:10', '2026-05-31'])
    expect(await read({ back })).toEqual([['back', 'a day and time such as 2026-05-31T16:30']]);
  const gone = { hash: '0'.repeat(64), author: 'a', number: 1, kind: 'note', under: '0'.repeat(64) };
  for (const [day, ok] of [
    ['2026-05-30', true],
    ['2026-02-30', false],
  ])
    expect(checkContent('removal', { removed: [{ ...gone, day }] }).ok).toBe(ok);
});

it('what another program wrote where a figure belongs is shown as it stands', () => {
  const reading = { wording: 'us', names: [], persons: new Set<string>() } as const;
  const told = (json: Json) => fieldRows(json, undefined, reading).map(({ value }) => value);
  expect(told({ force: { value: 130, unit: { a: 1 }, how: 'measured' } })).toEqual([
    '130 {"a":1} (measured)',
  ]);
  expect(told({ force: { value: '125 lbf', low: ['x'], high: 138, source: {} } })).toEqual([
    '125 lbf (["x"] to 138, source: {})',
  ]);
  expect(told({ vehicle: { heedway: 'vehicle', name: {} } })).toEqual(['vehicle: {}']);
});
