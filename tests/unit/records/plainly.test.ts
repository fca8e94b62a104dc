/** What is plainly of its kind without the schema is so by the schema: held against it over everything changed in a year of a club. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkContent } from '../../../papers/record/check.ts';
import type { Kind } from '../../../papers/record/fields.ts';
import { plainlyOf } from '../../../papers/record/quick.ts';

interface Said {
  readonly kind: Kind;
  readonly content: Record<string, unknown>;
}

const year: readonly Said[] = readFileSync('examples/club/year.jsonl', 'utf8')
  .split('\n')
  .flatMap((line) => (line.includes('"body"') ? [(JSON.parse(line) as { body: Said }).body] : []));

/** One of each kind, and those that say other fields than one before. */
const shapes = [
  ...new Map(year.map((body) => [`${body.kind} ${Object.keys(body.content).sort()}`, body])).values(),
];

const instead = [
  '',
  ' ',
  'x'.repeat(10_001),
  'no\u202eorder',
  'abc',
  3,
  -1,
  true,
  null,
  [],
  {},
  ['x'],
  { x: 1 },
];

/** Every value in it put otherwise, left out, and with a field more. */
function* changed(value: unknown): Generator<unknown> {
  yield* instead;
  if (Array.isArray(value)) {
    yield [...value, ...value];
    for (const [i, one] of value.entries())
      for (const other of changed(one)) yield [...value.slice(0, i), other, ...value.slice(i + 1)];
  } else if (typeof value === 'object' && value !== null) {
    const group = value as Record<string, unknown>;
    yield { ...group, more: 'x' };
    for (const [key, one] of Object.entries(group)) {
      const { [key]: _, ...rest } = group;
      yield rest;
      // The paper of a departure is not looked into.
      if (key !== 'paper') for (const other of changed(one)) yield { ...rest, [key]: other };
    }
  }
}

describe('what is plainly of its kind', () => {
  it('is every record of a year that holds plain words alone', () => {
    expect(shapes.length).toBeGreaterThan(12);
    const plain = year.filter(({ kind, content }) => plainlyOf(kind, content));
    expect(plain.length).toBe(year.length);
  });

  it('is never what the schema refuses', () => {
    let refused = 0;
    for (const { kind, content } of shapes)
      for (const other of changed(content)) {
        const right = checkContent(kind, other).ok;
        if (!right) refused++;
        if (plainlyOf(kind, other) && !right) expect.fail(`${kind}: ${JSON.stringify(other)?.slice(0, 300)}`);
      }
    expect(refused).toBeGreaterThan(1000);
  });
});
