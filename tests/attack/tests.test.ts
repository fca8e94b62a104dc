/** Records of tests, changed by chance: read or refused, measured or refused, never a figure that is none. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { measured } from '../../desk/measured/measure.ts';
import { readTest } from '../../papers/read-test.ts';
import { tellRefusal } from '../../words/measured/refusals.ts';
import { tellMeasured } from '../../words/measured/results.ts';
import { runs } from '../support/tier.ts';
import { type Chance, chanceOf, changedJson } from './mutate.ts';

const folder = new URL('../../examples/tests/', import.meta.url);
const records = readdirSync(folder).map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')));
const shown = { system: 'metric', wording: 'uk' } as const;

/** Some of its figures read otherwise: a place, a unit, a sign. */
function misread(part: unknown, chance: Chance): unknown {
  if (Array.isArray(part)) return part.map((p) => misread(p, chance));
  if (typeof part === 'object' && part !== null)
    return Object.fromEntries(Object.entries(part).map(([k, p]) => [k, misread(p, chance)]));
  const figure = /^(-?[\d.]+)(.*)$/.exec(String(part));
  if (!figure || typeof part === 'boolean' || chance.share() > 0.15) return part;
  const value = Number(figure[1]) * chance.one([0, 0.001, 0.1, 0.3048, 0.9, 1.1, 2.2, 10, 1000, -1]);
  return typeof part === 'number' ? value : `${value}${figure[2]}`;
}

it('changed records crash nothing and tell no figure that is none', { timeout: 300_000 }, async () => {
  let [read, told] = [0, 0];
  for (let seed = 1; seed <= runs(30, 6000); seed++) {
    const chance = chanceOf(seed);
    const record = structuredClone(records[seed % records.length]);
    // The readings are what is new here: the papers inside are attacked elsewhere.
    record.test = chance.share() < 0.4 ? changedJson(record.test, chance) : misread(record.test, chance);
    const got = await readTest({ path: 'test.json', content: JSON.stringify(record) }, async () => undefined);
    if (!got.ok) {
      expect(got.problems.length).toBeGreaterThan(0);
      continue;
    }
    read++;
    const made = measured(got.value);
    if (!made.ok) {
      expect(tellRefusal(made, shown), `${seed}`).not.toMatch(/undefined|NaN/);
      continue;
    }
    told++;
    for (const line of tellMeasured(made, shown))
      expect(line, `${seed}`).not.toMatch(/undefined|NaN|Infinity/);
    for (const { quantity, interval } of made.results)
      expect(
        [quantity.value, quantity.low, quantity.high, ...interval].every(Number.isFinite),
        `${seed}`,
      ).toBe(true);
  }
  expect(read).toBeGreaterThan(0);
  expect(told).toBeGreaterThan(0);
});
