/** Every published figure under tests/truth/sums against the register, each within what its print allows. */
import { describe, expect, it } from 'vitest';
import { sums } from '../../../engine/sums/register.ts';
import { hasSourcePage, measure, truthSources } from '../../../scripts/pages/truth.ts';

const sources = truthSources();

describe.each(sources)('$source', ({ folder, cases }) => {
  it('says where it comes from', () => expect(hasSourcePage(folder)).toBe(true));

  it(`agrees in all ${cases.length} cases`, () => {
    expect(cases.length).toBeGreaterThan(0);
    for (const truth of cases) {
      const { computed, used } = measure(truth);
      expect(
        used,
        `${truth.sum} ${JSON.stringify(truth.inputs)}: ${computed}, printed ${truth.expected} ${truth.unit}`,
      ).toBeLessThanOrEqual(1);
    }
  });
});

describe('the register', () => {
  it('has at least one outside or exact figure for every sum', () => {
    const checked = new Set(sources.flatMap((s) => s.cases.map((c) => c.sum)));
    expect(sums.map((s) => s.id).filter((id) => !checked.has(id))).toEqual([]);
  });

  it('rests on at least 35 sources', () => expect(sources.length).toBeGreaterThanOrEqual(35));
});
