/** What is left out of a crew never lets it leave; and of a crew no record has a name, nor whoever stood by. */
import { describe, expect, it } from 'vitest';
import { crewFindings } from '../../../desk/crew.ts';
import { nameless } from '../../../desk/leave/nameless.ts';
import { verdictOf } from '../../../engine/answer/verdict.ts';
import { readOuting, writeFile } from '../../../papers/index.ts';
import { examplePaper } from '../../support/papers.ts';

/** Papers as people write them. */
type Json = any;

const paper: Json = await examplePaper('late-turn');

async function wordOf(json: Json): Promise<string> {
  const read = await readOuting({ path: 'x.json', content: writeFile(json) }, async () => undefined);
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('; '));
  return verdictOf(crewFindings(read.value));
}

/** Every place of the paper's crew and certificates, but what a row is nothing without. */
const needed: ReadonlySet<string> = new Set(['name', 'what', 'on']);
function places(json: Json, at: readonly (string | number)[]): (string | number)[][] {
  if (typeof json !== 'object' || json === null) return [[...at]];
  const within = Object.entries(json).flatMap(([key, part]) =>
    needed.has(key) || at.includes('powers')
      ? []
      : places(part, [...at, Array.isArray(json) ? Number(key) : key]),
  );
  return [[...at], ...within];
}
function without(json: Json, [first, ...rest]: readonly (string | number)[]): Json {
  if (rest.length > 0) {
    const copy = Array.isArray(json) ? [...json] : { ...json };
    copy[first] = without(json[first], rest);
    return copy;
  }
  if (Array.isArray(json)) return json.toSpliced(Number(first), 1);
  const { [first]: _, ...left } = json;
  return left;
}

describe('each place of crew and certificates left out once', () => {
  const well = structuredClone(paper);
  well.crew[0].hours.onDuty = '4 h';
  const asked = [
    'onDuty',
    'sinceBreak',
    'rest',
    'days',
    'sober',
    'fit',
    'hours',
    'looksOutAt',
    'until',
    'of',
  ];

  it('where all is well: what the host asks of whoever works is missed, and nothing gets better', async () => {
    expect(await wordOf(well)).toBe('go');
    const rows = [...places(well.crew[0], ['crew', 0]), ...places(well.crew[3], ['crew', 3])];
    const shown = [...places(well.shown[0], ['shown', 0]), ...places(well.shown[3], ['shown', 3])];
    for (const path of [...rows, ...shown, ['crew'], ['shown']]) {
      const last = path[path.length - 1];
      const misses = typeof last === 'number' || asked.includes(last) || path.length === 1;
      expect(await wordOf(without(well, path)), path.join('.')).toBe(misses ? 'unknown' : 'go');
    }
  });
  it('where somebody is over: never go', async () => {
    expect(await wordOf(paper)).toBe('hold');
    for (const path of [...places(paper.crew, ['crew']), ...places(paper.shown, ['shown'])])
      expect(['hold', 'unknown'], path.join('.')).toContain(await wordOf(without(paper, path)));
  });
});

it('a record has numbers for whoever works, nothing of whoever stands by, and not who signed them off', () => {
  const kept: Json = nameless(paper);
  expect(JSON.stringify({ ...kept, line: 0, train: 0, host: 0 })).not.toMatch(
    /Larch|Rowan|Alder|Hazel|examiner/,
  );
  expect(kept.crew.map(({ name }: { name: string }) => name)).toEqual(['person 1', 'person 6']);
  expect(kept.shown.map(({ of }: { of: string }) => of)).toEqual(['person 1', 'person 6']);
  expect(kept.crew[1].looksOutAt).toBe('Mill Lane crossing');
});
