/** Laws of the register: finite inside the range, a problem one step outside, every sum in words and docs. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SumSymbol } from '../../engine/base/sum.ts';
import { evaluateSum, sums } from '../../engine/sums/register.ts';
import { sumWords } from '../../words/sums.ts';
import { runs } from '../support/tier.ts';

const within = (s: SumSymbol): fc.Arbitrary<number> => {
  const low = s.low ?? -1e3;
  const high = Math.min(s.high ?? 1e4, 1e6);
  if (s.whole) return fc.integer({ min: Math.ceil(low), max: Math.floor(high) });
  return fc.double({ min: low, max: high, minExcluded: s.open === true, noNaN: true });
};

describe.each(sums)('sum $id', (sum) => {
  it('gives finite results or a problem inside its range, never a throw', () => {
    const inputs = fc.record(Object.fromEntries(sum.inputs.map((s) => [s.symbol, within(s)])));
    fc.assert(
      fc.property(inputs, (given) => {
        const outcome = evaluateSum(sum, given);
        if (outcome.ok) {
          for (const value of Object.values(outcome.values)) expect(Number.isFinite(value)).toBe(true);
        } else expect(outcome.problems.length).toBeGreaterThan(0);
      }),
      { seed: 20261125, numRuns: runs(200, 2000) },
    );
  });

  it('calls one step past each limit a problem, and not a number', () => {
    for (const s of sum.inputs) {
      const outside = [Number.NaN, Number.POSITIVE_INFINITY];
      if (s.low !== undefined) outside.push(s.open ? s.low : s.low - 1e-6 * Math.max(1, Math.abs(s.low)));
      if (s.high !== undefined) outside.push(s.high + 1e-6 * Math.max(1, Math.abs(s.high)));
      for (const value of outside) {
        const others = Object.fromEntries(
          sum.inputs.map((o) => [o.symbol, o.default ?? Math.max(o.low ?? 0, 0) + 0.01]),
        );
        const outcome = evaluateSum(sum, { ...others, [s.symbol]: value });
        expect(outcome.ok, `${s.symbol} = ${value}`).toBe(false);
        if (!outcome.ok) expect(outcome.problems.some((p) => p.symbol === s.symbol)).toBe(true);
      }
    }
  });

  it('has its words, an equation and a source', () => {
    expect(sumWords[sum.id].title.length).toBeGreaterThan(3);
    expect(sum.equation.length).toBeGreaterThan(3);
    expect(sum.source.length).toBeGreaterThan(3);
  });
});

describe('the register', () => {
  it('has no two sums of one id, and no words without a sum', () => {
    expect(new Set(sums.map((s) => s.id)).size).toBe(sums.length);
    expect(Object.keys(sumWords).filter((id) => !sums.some((s) => s.id === id))).toEqual([]);
  });
});
