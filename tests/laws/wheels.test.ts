/** Laws of wheels on their track: wider, thicker, deeper; run the other way; other units of nothing. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../engine/base/quantity.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { askWheels } from '../../engine/questions/wheels/ask.ts';
import type { WheelsetFit } from '../../engine/questions/wheels/look.ts';
import { runs } from '../support/tier.ts';
import { frogAt, wheeled } from '../support/wheeled.ts';

const IN = 0.0254;
const mm = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map((x) => x / 1000);
const odd = fc.record({
  backToBack: fc.array(mm(170, 178), { minLength: 1, maxLength: 4 }),
  flangeThickness: mm(2, 5).map((f) => exact(f)),
  flangeHeight: mm(2, 8),
  width: mm(10, 22),
});
const look = (outing: Outing): WheelsetFit => {
  const { wheelsets } = askWheels(openOuting(outing)).data;
  return wheelsets.find((w) => w.vehicle === 'car2') as WheelsetFit;
};
const left = (fit: WheelsetFit) =>
  [fit.frog?.left, fit.guard?.left, fit.gauge?.left, fit.tread?.left, fit.floor?.left].map(
    (l) => l ?? Number.NaN,
  );
const CLOSE = 1e-12;

describe('wheels on their track', () => {
  it('a wider gauge never leaves less play, nor more tread on the rail', () => {
    fc.assert(
      fc.property(odd, mm(0, 5), (w, by) => {
        const [is, wide] = [0, by].map((e) => look(wheeled(w, [frogAt(30)], { gauge: 7.25 * IN + e }, 2)));
        expect((wide.gauge?.left ?? 0) - (is.gauge?.left ?? 0)).toBeCloseTo(by, 9);
        expect(wide.mostPlay ?? 0).toBeGreaterThanOrEqual((is.mostPlay ?? 0) - CLOSE);
        expect(wide.tread?.left ?? 0).toBeLessThanOrEqual((is.tread?.left ?? 0) + CLOSE);
      }),
      { numRuns: runs(20, 300) },
    );
  });

  it('a thicker flange never has more left at a frog or between the rails; one reading more never more anywhere', () => {
    fc.assert(
      fc.property(odd, mm(0, 2), mm(170, 178), (w, by, reading) => {
        const is = left(look(wheeled(w)));
        const thick = left(look(wheeled({ ...w, flangeThickness: exact(w.flangeThickness.value + by) })));
        expect(thick[0]).toBeLessThanOrEqual(is[0] + CLOSE);
        expect(thick[2]).toBeLessThanOrEqual(is[2] + CLOSE);
        expect(thick[1]).toBe(is[1]);
        const more = left(look(wheeled({ ...w, backToBack: [...w.backToBack, reading] })));
        for (const [i, l] of more.entries()) expect(l).toBeLessThanOrEqual(is[i] + CLOSE);
      }),
      { numRuns: runs(20, 300) },
    );
  });

  it('is the same run the other way, at the same place of the line', () => {
    fc.assert(
      fc.property(odd, fc.integer({ min: 5, max: 90 }), (w, at) => {
        const curves = [{ from: 40, to: 60, startCurvature: 0.05, endCurvature: 0.05, gaugeWidening: 0.003 }];
        const here = wheeled(w, [frogAt(at), frogAt(at + 3, { guardCheck: 7 * IN })], { curves });
        const there: Outing = { ...here, direction: 'reverse' };
        const [a, b] = [here, there].map(look);
        expect(left(b)).toEqual(left(a));
        expect(here.line.length - (b.frog?.from ?? 0)).toBeCloseTo(a.frog?.from ?? 0, 9);
      }),
      { numRuns: runs(20, 200) },
    );
  });

  it('a guard rail moved toward its rail gives the frog what it takes from the faces', () => {
    fc.assert(
      fc.property(odd, mm(0, 3), (w, by) => {
        const is = look(wheeled(w));
        const moved = look(
          wheeled(w, [frogAt(30, { guardCheck: 7.05 * IN + by, guardFace: 6.82 * IN + by })]),
        );
        expect((moved.frog?.left ?? 0) - (is.frog?.left ?? 0)).toBeCloseTo(by, 9);
        expect((moved.guard?.left ?? 0) - (is.guard?.left ?? 0)).toBeCloseTo(-by, 9);
      }),
      { numRuns: runs(20, 200) },
    );
  });
});
