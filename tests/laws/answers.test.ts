/** Laws of the whole answer: never a throw, never a NaN; remedies do what they say; the cautious figure covers. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepare } from '../../engine/motion/prepare.ts';
import { sampleStops, summarise } from '../../engine/motion/sample.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import { applyChange } from '../../engine/outing/change.ts';
import { openOuting } from '../../engine/outing/open.ts';
import { bundled } from '../support/bundled.ts';
import { dressed } from '../support/dressed-outings.ts';
import { runs } from '../support/tier.ts';

const quick = await bundled<typeof import('../support/dressed-outings.ts')>('dressed-outings.ts');

const numbersIn = (value: unknown): number[] => {
  if (typeof value === 'number') return [value];
  if (value instanceof Float64Array) return Array.from(value);
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
};

describe('any outing', () => {
  it('gets an answer without a throw or a NaN, and finite limits', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const answer = quick.quickAnswer(quick.dressed(seed));
        expect(numbersIn(answer).some(Number.isNaN)).toBe(false);
        expect(['go', 'limits', 'hold', 'unknown']).toContain(answer.verdict);
        const map = answer.speeds!;
        expect(Array.from(map.limit).every((v) => Number.isFinite(v) && v >= 0)).toBe(true);
        // One look at each place's figures, one expectation for all: there are millions.
        expect(map.gap.findIndex((gap, j) => gap < map.cautiousStop[j])).toBe(-1);
        expect(map.cautiousStop.findIndex((d, j) => d < map.likelyStop[j] * (1 - 4e-3))).toBe(-1);
      }),
      { seed: 20261125, numRuns: runs(15, 2000) },
    );
  });

  it('the same outing gives the same answer', () => {
    const { wholeAnswer, dressed } = quick;
    for (const seed of [41, 45].slice(0, runs(1, 2)))
      expect(wholeAnswer(dressed(seed))).toEqual(wholeAnswer(dressed(seed)));
  });
});

describe('remedies', () => {
  it('each clears its finding when it is really made', () => {
    let tried = 0;
    for (let seed = 1; seed <= runs(2, 50); seed++) {
      const outing = dressed(seed);
      const inquiry = quick.quickInquiry(outing);
      const answer = quick.withRemedies(inquiry, quick.firstAnswer(inquiry));
      for (const finding of answer.findings) {
        for (const remedy of finding.remedies) {
          const after = quick.quickInquiry(applyChange(outing, remedy.change));
          expect(
            quick.isCleared(finding, after),
            `${seed} ${finding.code} ${JSON.stringify(remedy.change)}`,
          ).toBe(true);
          expect(quick.firstAnswer(after).verdict).toBe(remedy.verdict);
          tried++;
        }
        // Those that better the word first, the smaller before the greater; none after which the word is worse.
        const order = finding.remedies.map((r) => (r.betters ? 0 : 1000) + r.size);
        expect(order).toEqual([...order].sort((a, b) => a - b));
        const rank = (word: string): number => ['go', 'limits', 'unknown', 'hold'].indexOf(word);
        for (const { betters, verdict } of finding.remedies)
          expect(rank(answer.verdict) - rank(verdict)).toBeGreaterThanOrEqual(betters ? 1 : 0);
      }
    }
    expect(tried).toBeGreaterThan(runs(3, 100));
  });
});

describe('the cautious figure', () => {
  it('covers 99 of 100 fresh stops, within the band that chance allows', () => {
    let inside = 0;
    let all = 0;
    let covered = 0;
    let outings = 0;
    for (let seed = 1; seed <= runs(30, 60); seed++) {
      const ready = prepare(openOuting(dressed(seed)), 0.5, 0);
      const inputs = ready.inputs('dry');
      const [s, v] = [10 + seed, 1 + (seed % 4)];
      const figure = summarise(sampleStops(inputs, s, v, 2000, seed)).p99;
      if (!Number.isFinite(figure)) continue;
      const fresh = sampleStops(inputs, s, v, 2000, seed + 10_000);
      const share = fresh.filter((d) => d <= figure).length / fresh.length;
      inside += fresh.filter((d) => d <= figure).length;
      all += fresh.length;
      outings++;
      // Figure and fresh stops are both drawn: twice the spread of one.
      if (share >= 0.99 - 3 * Math.SQRT2 * Math.sqrt((0.99 * 0.01) / 2000)) covered++;
    }
    // The 99th percentile of 2,000 covers 99 % on average.
    expect(outings).toBeGreaterThan(runs(20, 40));
    expect(inside / all).toBeGreaterThan(0.989);
    expect(inside / all).toBeLessThan(0.991);
    expect(covered).toBe(outings);
  });

  it('of one cautious stop is at least the sampled bound where it is set, and near it elsewhere', () => {
    const short: number[] = [];
    for (let seed = 1; seed <= runs(20, 40); seed++) {
      const outing = dressed(seed);
      const ready = prepare(openOuting(outing));
      const inputs = ready.inputs(outing.conditions.railState);
      const { cautious } = ready.models(outing.conditions.railState);
      const [s, v] = [
        (seed * 37) % (outing.line.length * 0.8),
        Math.min(outing.host.speed!.value, outing.plannedSpeed ?? 99),
      ];
      const bound = summarise(sampleStops(inputs, s, v, 4000, seed)).p99;
      const single = stopDistance(cautious, s, v);
      if (Number.isFinite(bound)) short.push(single / bound);
    }
    short.sort((a, b) => a - b);
    expect(short.length).toBeGreaterThan(runs(12, 25));
    expect(short[0]).toBeGreaterThan(0.9);
    expect(short[Math.floor(short.length / 10)]).toBeGreaterThan(0.97);
  });
});
