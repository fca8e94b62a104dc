/** The axis is ruled as a general-purpose scale library (d3-scale) rules it. */
import { scaleLinear } from 'd3-scale';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundFigures } from '../../../views/strip/scale.ts';
import { runs } from '../../support/tier.ts';

describe('round figures', () => {
  it('are those of the library, over any stretch', () => {
    const figure = fc.double({ min: -5000, max: 5000, noNaN: true });
    fc.assert(
      fc.property(
        figure,
        fc.double({ min: 1e-3, max: 9000, noNaN: true }),
        fc.integer({ min: 2, max: 14 }),
        (from, wide, count) => {
          const theirs = scaleLinear([from, from + wide], [0, 1]).ticks(count);
          const ours = roundFigures(from, from + wide, count);
          expect(ours.length).toBe(theirs.length);
          ours.forEach((n, i) => expect(n).toBeCloseTo(theirs[i], 9));
        },
      ),
      { seed: 20261125, numRuns: runs(500, 5000) },
    );
  });
  it('are plain decimals, and none of no stretch', () => {
    expect(roundFigures(0, 0.5, 5)).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5]);
    expect(roundFigures(0, 7, 4)).toEqual([0, 2, 4, 6]);
    expect(roundFigures(3, 3, 4)).toEqual([3]);
    expect(roundFigures(4, 3, 4)).toEqual([]);
  });
});
