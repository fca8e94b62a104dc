/** Every published figure under tests/truth/sums against the register, each within what its print allows. */
import { describe, expect, it } from 'vitest';
import { sums } from '../../../engine/sums/register.ts';
import { printedIn } from '../../support/measured.ts';
import { allowed, computed, truthSources } from '../../support/sum-truth.ts';

const sources = truthSources();

describe.each(sources)('$source', ({ folder, cases, grade, ...told }) => {
  const printed = printedIn(new URL(`${folder}/`, import.meta.url).href, grade, told);

  it(`agrees in all ${cases.length} cases`, () => {
    expect(cases.length).toBeGreaterThan(0);
    for (const truth of cases)
      printed.figure(truth.sum, computed(truth), truth.expected, allowed(truth), truth.unit);
  });
});

describe('the register', () => {
  it('has at least one outside or exact figure for every sum', () => {
    const checked = new Set(sources.flatMap((s) => s.cases.map((c) => c.sum)));
    expect(sums.map((s) => s.id).filter((id) => !checked.has(id))).toEqual([]);
  });

  it('rests on at least 35 sources', () => expect(sources.length).toBeGreaterThanOrEqual(35));
});
