/**
 * Whatever comes in between, no paper has another word than the command line for the same outing, and nothing that was
 * written is lost. On every push one sitting; by `SITTINGS=1000`, from the seed `SITTING`, as many as `MINUTES` allow,
 * which are written into docs/reliability.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect } from '@playwright/test';
import { withSittings } from '../attack/page.ts';
import { runs } from '../support/tier.ts';
import { test } from './demo.ts';
import { served } from './served.ts';
import { sittings } from './support/sitting.ts';

const addresses = { whole: served('whole'), brief: served('brief') };

const given = process.env['SITTINGS'];
const COUNT = Number(given ?? runs(1, 1000));
const FIRST = Number(process.env['SITTING'] ?? 1);
/** Side by side. */
const PIECES = COUNT < 2 ? 1 : 2;
const began = Date.now();
const inTime = (): boolean => Date.now() - began < Number(process.env['MINUTES'] ?? Infinity) * 60_000;

for (let piece = 0; piece < PIECES; piece++) {
  const numbers = Array.from({ length: COUNT }, (_, i) => FIRST + i).filter((n) => n % PIECES === piece);
  test(`whatever comes in between, ${numbers.length} times from ${numbers[0]}`, async ({ browser }) => {
    test.setTimeout(numbers.length * 120_000);
    const { looked, faults } = await sittings(browser, addresses, numbers, inTime);
    if (given !== undefined) {
      const page = new URL('../../docs/reliability.md', import.meta.url);
      const tried = { from: numbers[0], step: PIECES, looked, faults };
      writeFileSync(page, withSittings(readFileSync(page, 'utf8'), tried));
    } else expect(looked.sittings + faults.length).toBe(numbers.length);
    expect(looked.words).toBeGreaterThan(0);
    expect(faults).toEqual([]);
  });
}
