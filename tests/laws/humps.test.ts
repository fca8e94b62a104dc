/** Laws of what grounds and lifts over crests and sags; and frames of true length laid on the profile by halving. */
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { openOuting } from '../../engine/outing/open.ts';
import { lookAtHumps } from '../../engine/questions/humps/look.ts';
import { reverseLine } from '../../engine/things/line/geometry.ts';
import type { HeightKnot, Line } from '../../engine/things/line/types.ts';
import { crested } from '../support/crested.ts';
import { altered } from '../support/rules.ts';
import { runs } from '../support/tier.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const profile = fc
  .array(fc.record({ run: real(0.5, 3), grade: real(-0.03, 0.03) }), { minLength: 15, maxLength: 30 })
  .map((pieces) => {
    const heights = [{ at: 0, height: 0 }];
    for (const { run, grade } of pieces) {
      const last = heights[heights.length - 1];
      heights.push({ at: last.at + run, height: last.height + run * grade });
    }
    return heights;
  });
const LENGTH = 2.5;
const OVERHANG = 0.4;

interface Car {
  readonly at: number;
  readonly base: number;
}

function taken(line: Pick<Line, 'heights'>, { at, base }: Car, turned = false) {
  const shape = { length: LENGTH, overhang: OVERHANG };
  const outing = crested(line.heights, [shape, shape]);
  const group = { id: 'd', name: 'd', at: LENGTH / 2, axles: 3, wheelBase: base, driven: true, travel: 0 };
  const parts = [{ name: 'part', at: turned ? LENGTH - at : at, height: 0.1 }];
  const of = (i: number, changes: object) => altered(outing, i, changes);
  const [low, stiff] = [of(0, { lowParts: parts }), of(0, { groups: [group] })];
  const first = (o: typeof outing) => lookAtHumps(openOuting(o))[0];
  return { rise: first(low).parts[0].rise, hangs: first(stiff).groups[0].hangs };
}

const cars = fc.record({ at: real(0, LENGTH), base: real(0.4, 1.6) });

it('the line run the other way with the vehicle turned round is the same', () => {
  fc.assert(
    fc.property(profile, cars, (heights, car) => {
      const line = { ...crested(heights, [{ length: 2, overhang: 0.4 }]).line };
      const [is, other] = [taken(line, car), taken(reverseLine(line), car, true)];
      expect(other.rise).toBeCloseTo(is.rise, 9);
      expect(other.hangs).toBeCloseTo(is.hangs, 9);
    }),
    { numRuns: runs(15, 200) },
  );
});

it('no place takes more than was found, by frames of true length within 0.2 mm (grades to 3 %)', () => {
  fc.assert(
    fc.property(profile, cars, real(0, 1), (heights, car, share) => {
      const length = heights[heights.length - 1].at;
      const { rise } = taken({ heights }, car);
      const head = LENGTH + share * (length - LENGTH);
      const here = laid(heights, head, car.at);
      expect(here).toBeLessThan(rise + 2e-4);
      // And it is reached: somewhere among many places.
      const all = Array.from({ length: 400 }, (_, i) =>
        laid(heights, LENGTH + (i / 399) * (length - LENGTH), car.at),
      );
      expect(Math.max(0, ...all)).toBeGreaterThan(rise - 2e-3);
    }),
    { numRuns: runs(15, 200) },
  );
});

/** Rail above the frame at a distance from the front end, the frame laid with both wheels on the rail by halving. */
function laid(heights: readonly HeightKnot[], head: number, along: number): number {
  const z = (x: number): number => {
    const i = Math.max(
      1,
      Math.min(
        heights.length - 1,
        heights.findIndex((k) => k.at >= x),
      ),
    );
    const [p, q] = [heights[i - 1], heights[i]];
    return p.height + ((x - p.at) / (q.at - p.at)) * (q.height - p.height);
  };
  const centres = LENGTH - 2 * OVERHANG;
  const front = head - OVERHANG;
  let [low, high] = [0, centres];
  for (let k = 0; k < 50; k++) {
    const mid = (low + high) / 2;
    if (Math.hypot(mid, z(front - mid) - z(front)) < centres) low = mid;
    else high = mid;
  }
  const along1 = (along - OVERHANG) / centres;
  const [x, y] = [front - along1 * low, z(front) + along1 * (z(front - low) - z(front))];
  return z(x) - y;
}
