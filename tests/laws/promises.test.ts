/** Each remedy and each step of a ladder, written into the files and asked anew, gives the word that was promised. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bundled } from '../support/bundled.ts';
import { examplePaper } from '../support/papers.ts';
import { full, runs } from '../support/tier.ts';

const { brokenPromises, madeOver } =
  await bundled<typeof import('../support/kept-promises.ts')>('kept-promises.ts');

const folder = new URL('../../examples/', import.meta.url).pathname;
const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
const examples = await Promise.all(names.map((name) => examplePaper(name.slice(0, -'.json'.length))));

describe('a promise is kept by the files', () => {
  it('of the examples', async () => {
    let all = 0;
    // The longest takes as long as all others: on a push its ladder is walked in tests/unit/answer/ladder.test.ts.
    const tried = full ? examples : examples.filter(({ name }) => name !== 'Busy afternoon');
    expect(examples.length - tried.length).toBe(runs(1, 0));
    for (const paper of tried) {
      const { broken, promised } = await brokenPromises(paper);
      expect(broken, String(paper['name'])).toEqual([]);
      all += promised;
    }
    expect(all).toBeGreaterThan(5);
  }, 300_000);

  it('of random outings', async () => {
    let all = 0;
    for (let seed = 1; seed <= runs(1, 400); seed++) {
      const { broken, promised } = await brokenPromises(madeOver(examples, seed));
      expect(broken, `${seed}`).toEqual([]);
      all += promised;
    }
    expect(all).toBeGreaterThan(runs(1, 400));
  }, 3_600_000);
});
