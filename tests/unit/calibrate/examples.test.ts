/** Every kind of test has an example, which is read, measured, told and written into the paper of its vehicle. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { applyToVehicle } from '../../../desk/measured/apply.ts';
import { measured } from '../../../desk/measured/measure.ts';
import { tests } from '../../../engine/calibrate/tests/index.ts';
import { checkFile } from '../../../papers/check.ts';
import { readTest } from '../../../papers/read-test.ts';
import { tellMeasured } from '../../../words/measured/results.ts';
import { testNames } from '../../../words/measured/tests.ts';

const folder = new URL('../../../examples/tests/', import.meta.url);
const shown = { system: 'imperial', wording: 'us' } as const;
const kinds = Object.keys(tests) as (keyof typeof tests)[];

it('one of each kind', () => {
  expect(readdirSync(folder).sort()).toEqual(kinds.map((k) => `${k}.json`).sort());
  expect(Object.keys(testNames).sort()).toEqual([...kinds].sort());
});

describe.each(kinds)('%s', (kind) => {
  const content = readFileSync(new URL(`${kind}.json`, folder), 'utf8');
  it('is read, measured and told', async () => {
    const read = await readTest({ path: `${kind}.json`, content }, async () => undefined);
    if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
    const made = measured(read.value);
    if (!made.ok) throw new Error(JSON.stringify(made));
    for (const line of tellMeasured(made, {
      ...shown,
      ...(read.value.outing ? { outing: read.value.outing } : {}),
    })) {
      if (process.env.SAY) console.log(line);
      expect(line).not.toMatch(/undefined|NaN|Infinity|\{/);
    }
    for (const { key, quantity, interval, systematic } of made.results) {
      expect(tests[kind].gives).toContain(key.split('/')[0]);
      expect(quantity.low).toBeLessThanOrEqual(interval[0]);
      expect(quantity.high).toBeGreaterThanOrEqual(interval[1]);
      expect(quantity).toMatchObject({ how: 'measured', source: read.value.name, date: read.value.date });
      expect(systematic).toBeGreaterThanOrEqual(0);
      expect(systematic).toBeLessThanOrEqual(1);
    }
    const paper = JSON.parse(content)['vehicle'];
    if (!paper) return;
    const applied = applyToVehicle(paper, JSON.parse(content), made.results);
    expect(checkFile('vehicle', applied.paper)).toMatchObject({ ok: true });
    expect(applied.written.length + applied.left.length).toBeGreaterThanOrEqual(made.results.length);
  });
});
