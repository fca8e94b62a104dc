/**
 * Laws of couplers over crests and sags: run the other way, turned upside down, shimmed; and an independent placing of both
 * vehicles on the profile by halving, true to their lengths.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Outing } from '../../engine/outing/types.ts';
import { endOnTrack, riseOver, risesOn } from '../../engine/things/coupler/crest.ts';
import { edgeApart, rollBetween, tiltOver } from '../../engine/things/coupler/tilt.ts';
import { reverseLine } from '../../engine/things/line/geometry.ts';
import type { Line } from '../../engine/things/line/types.ts';
import { crested, crestsOf, knuckle, type Shape, shaped } from '../support/crested.ts';
import { runs } from '../support/tier.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const shape = fc
  .record({ length: real(1.2, 4), share: real(0.1, 0.3), base: real(0, 0.23) })
  .map(({ length, share, base }): Shape => ({ length, overhang: length * share, base }));
/** Grades of a few per cent, points half a metre to three metres apart. */
const profile = fc
  .array(fc.record({ run: real(0.5, 3), grade: real(-0.05, 0.05) }), { minLength: 25, maxLength: 40 })
  .map((pieces) => {
    const heights = [{ at: 0, height: 0 }];
    for (const { run, grade } of pieces) {
      const last = heights[heights.length - 1];
      heights.push({ at: last.at + run, height: last.height + run * grade });
    }
    return heights;
  });
const ends = (a: Shape, b: Shape) => {
  const { vehicles } = crested(
    [
      { at: 0, height: 0 },
      { at: 90, height: 0 },
    ],
    [a, b],
  ).train;
  const [rear, front] = [endOnTrack(vehicles[0], 'rear'), endOnTrack(vehicles[1], 'front')];
  if (!rear || !front) throw new Error('no guides');
  return { rear, front };
};
const onLine = (heights: Line['heights'], a: Shape, b: Shape): Line => crested(heights, [a, b]).line;

describe('couplers over crests and sags', () => {
  it('no place between knots stands farther out of line than the extremes found', () => {
    fc.assert(
      fc.property(profile, shape, shape, real(0, 1), (heights, a, b, share) => {
        const line = onLine(heights, a, b);
        const { rear, front } = ends(a, b);
        const { most, least } = risesOn(line, rear, front);
        const [from, to] = [b.length, line.length - a.length];
        if (to <= from) return;
        const rise = riseOver(line, rear, front)(from + share * (to - from));
        expect(rise).toBeLessThanOrEqual(most.rise + 1e-12);
        expect(rise).toBeGreaterThanOrEqual(least.rise - 1e-12);
      }),
      { numRuns: runs(40, 500) },
    );
  });

  it('on the line run the other way, with the vehicles exchanged, one stands as much lower as the other higher', () => {
    fc.assert(
      fc.property(profile, shape, shape, (heights, a, b) => {
        const line = onLine(heights, a, b);
        const [here, there] = [ends(a, b), ends(b, a)];
        const is = risesOn(line, here.rear, here.front);
        const turned = risesOn(reverseLine(line), there.rear, there.front);
        expect(turned.most.rise).toBeCloseTo(-is.least.rise, 9);
        expect(turned.least.rise).toBeCloseTo(-is.most.rise, 9);
        // Upside down a crest is a sag.
        const mirrored = risesOn(
          { ...line, heights: heights.map((k) => ({ ...k, height: -k.height })) },
          here.rear,
          here.front,
        );
        expect(mirrored.most.rise).toBeCloseTo(-is.least.rise, 9);
      }),
      { numRuns: runs(20, 300) },
    );
  });

  it('a grade throughout puts nothing out of line', () => {
    fc.assert(
      fc.property(real(-0.05, 0.05), shape, shape, (grade, a, b) => {
        const heights = [0, 13, 40, 90].map((at) => ({ at, height: grade * at }));
        const { rear, front } = ends(a, b);
        const { most, least } = risesOn(onLine(heights, a, b), rear, front);
        expect(Math.max(most.rise, -least.rise)).toBeLessThan(1e-9);
      }),
      { numRuns: runs(20, 200) },
    );
  });

  it('a shim of the lower one never holds less until it stands level', () => {
    fc.assert(
      fc.property(real(0.001, 0.02), real(0, 1), (lower, share) => {
        const held = (height: number): number =>
          crestsOf(
            crested(
              [
                { at: 0, height: 0 },
                { at: 90, height: 1 },
              ],
              [
                { length: 2, overhang: 0.4 },
                { length: 3, overhang: 0.5 },
              ],
              [knuckle(0.11), knuckle(height)],
            ),
          ).data.gaps[0].hold?.held ?? Number.NaN;
        expect(held(0.11 - lower * share)).toBeGreaterThanOrEqual(held(0.11 - lower) - 1e-12);
      }),
      { numRuns: runs(20, 200) },
    );
  });

  it('is what two rigid frames laid on the profile by halving show, true to their lengths, within 0.2 mm', () => {
    let worst = 0;
    fc.assert(
      fc.property(profile, shape, shape, real(0.2, 0.8), (heights, a, b, share) => {
        const bare = [a, b].map((s) => ({ ...s, base: 0 }));
        const line = onLine(heights, bare[0], bare[1]);
        const { rear, front } = ends(bare[0], bare[1]);
        const at = b.length + share * (line.length - a.length - b.length);
        if (at + a.length > line.length) return;
        const mine = riseOver(line, rear, front)(at);
        worst = Math.max(worst, Math.abs(mine - laid(heights, at, bare[0], bare[1])));
      }),
      { numRuns: runs(40, 500) },
    );
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThan(2e-4);
  });
});

/** Height of the end ahead above that behind, seen square to nothing: frames of true length with their wheels on the rail. */
function laid(heights: Line['heights'], at: number, ahead: Shape, behind: Shape): number {
  const z = (x: number): number => {
    let i = 1;
    while (i < heights.length - 1 && heights[i].at < x) i++;
    const [p, q] = [heights[i - 1], heights[i]];
    return p.height + ((x - p.at) / (q.at - p.at)) * (q.height - p.height);
  };
  const end = ({ length, overhang }: Shape, way: 1 | -1): number => {
    const centres = length - 2 * overhang;
    /** The frame whose near wheel stands at x: how far its end lies from where the two meet. */
    const frame = (x: number) => {
      let [low, high] = [0, centres];
      for (let k = 0; k < 60; k++) {
        const mid = (low + high) / 2;
        if (Math.hypot(mid, z(x + way * mid) - z(x)) < centres) low = mid;
        else high = mid;
      }
      const slope = (z(x) - z(x + way * low)) / centres;
      return { x: x - (way * overhang * low) / centres, z: z(x) + overhang * slope };
    };
    let [low, high] = [0, 2 * overhang];
    for (let k = 0; k < 60; k++) {
      const mid = (low + high) / 2;
      if (way * (frame(at + way * mid).x - at) < 0) low = mid;
      else high = mid;
    }
    return frame(at + way * low).z;
  };
  return end(ahead, 1) - end(behind, -1);
}

it('shaped vehicles have the trucks that they say', () => {
  const [v] = crested(
    [
      { at: 0, height: 0 },
      { at: 90, height: 0 },
    ],
    [
      { length: 2, overhang: 0.4 },
      { length: 2, overhang: 0.4 },
    ],
  ).train.vehicles;
  expect(shaped(v, { length: 3, overhang: 0.5, base: 0.3 }, v.front).groups.map((g) => g.at)).toEqual([
    0.5, 2.5,
  ]);
});

describe('couplers on cant and twist', () => {
  const level = [
    { at: 0, height: 0 },
    { at: 90, height: 0 },
  ];
  const two: readonly Shape[] = [
    { length: 3, overhang: 0.6 },
    { length: 2, overhang: 0.4 },
  ];
  const canted = (cants: Line['cants'], twist?: number, shapes = two): Outing => {
    const outing = crested(level, shapes);
    return { ...outing, line: { ...outing.line, cants, ...(twist === undefined ? {} : { twist }) } };
  };
  const tiltOf = (outing: Outing): number => crestsOf(outing).data.gaps[0].tilt;
  const ramp = (rise: number, over = 10): Line['cants'] => [
    { at: 30, cant: 0 },
    { at: 30 + over, cant: rise },
  ];

  it('is by hand on a run-off that both stand on: slope × distance of their middles ÷ width × half a face', () => {
    const outing = canted(ramp(0.02, 40));
    // Middles of 3 m and 2 m cars are 2.5 m apart; 0.02/40 m of cant each metre; faces 30 mm.
    const roll = ((0.02 / 40) * 2.5) / outing.line.contactWidth;
    expect(tiltOf(outing)).toBeCloseTo((roll * 0.03) / 2, 9);
  });

  it('the same cant under both tilts nothing, and the twist admitted counts where it is more', () => {
    expect(tiltOf(canted([{ at: 0, cant: 0.03 }]))).toBe(0);
    const outing = canted([], 0.004);
    expect(tiltOf(outing)).toBeCloseTo((((0.004 * 2.5) / outing.line.contactWidth) * 0.03) / 2, 9);
    expect(tiltOf(canted(ramp(0.02, 40), 0.01))).toBeGreaterThan(tiltOf(canted(ramp(0.02, 40))));
  });

  it('run the other way and mirrored it is the same; a steeper run-off never less; no place is worse', () => {
    fc.assert(
      fc.property(real(0.002, 0.03), real(3, 20), shape, shape, real(0, 1), (rise, over, a, b, share) => {
        const outing = canted(ramp(rise, over), undefined, [a, b]);
        const there = canted([], undefined, [b, a]);
        const turned = { ...there, line: reverseLine(outing.line) };
        const is = tiltOf(outing);
        expect(tiltOf(turned)).toBeCloseTo(is, 9);
        expect(tiltOf(canted(ramp(-rise, over), undefined, [a, b]))).toBeCloseTo(is, 12);
        expect(tiltOf(canted(ramp(rise * 1.5, over), undefined, [a, b]))).toBeGreaterThanOrEqual(is);
        const { rear, front } = ends(a, b);
        const at = b.length + share * (90 - a.length - b.length);
        expect(edgeApart(rollBetween(outing.line, rear, front, at), 0, 0.03)).toBeLessThanOrEqual(is + 1e-12);
      }),
      { numRuns: runs(20, 300) },
    );
  });

  it('of two places by hand: only the one ahead on canted track; and in a curve as far aside as the ends hang', () => {
    const { rear, front } = ends(two[0], two[1]);
    // From 40 m on 20 mm: ahead of 40 m the one stands on it wholly, the other not at all.
    const { line } = canted([
      { at: 39.999, cant: 0 },
      { at: 40, cant: 0.02 },
    ]);
    expect(rollBetween(line, rear, front, 40)).toBeCloseTo(0.02 / line.contactWidth, 9);
    expect(rollBetween(line, rear, front, 36)).toBe(0);
    const at = (radius: number): number => {
      const curve = {
        from: 20,
        to: 60,
        startCurvature: 1 / radius,
        endCurvature: 1 / radius,
        gaugeWidening: 0,
      };
      return tiltOver({ ...line, curves: [curve] }, rear, front, 0.03)?.(40) ?? Number.NaN;
    };
    // The 3 m car with 1.8 m between trucks: √(20² − 0.81 + 2.25) − 20 m aside, more than the 2 m one.
    const aside = Math.sqrt(400 - 0.81 + 2.25) - 20;
    expect(at(20)).toBeCloseTo((0.02 / line.contactWidth) * (aside + 0.015), 9);
    // Sharper than its trucks can stand in nothing is added: another question holds that.
    expect(at(0.8)).toBeLessThan((0.02 / line.contactWidth) * 1);
    expect(Number.isFinite(at(0.8))).toBe(true);
  });

  it('takes from what holds', () => {
    const held = (outing: Outing): number => crestsOf(outing).data.gaps[0].hold?.held ?? Number.NaN;
    const twisted = canted([], 0.05);
    expect(held(canted([])) - held(twisted)).toBeCloseTo(tiltOf(twisted), 12);
    expect(tiltOf(twisted)).toBeGreaterThan(0.005);
  });
});

it('a bend near the end of a line counts as far as both can stand over it, and no farther', () => {
  const shape = { length: 2, overhang: 0.4 };
  // Level, and down by a half from 89.2 m on: the one ahead stands with its first axle at the end, 90 m.
  const heights = [0, 40, 89.2, 90].map((at) => ({ at, height: at > 89.2 ? -0.4 : 0 }));
  const line = onLine(heights, shape, shape);
  const { rear, front } = ends(shape, shape);
  // Its axles 1.2 m apart: the front one 0.4 m down, the rear one level, its end 0.4 m beyond: up by 0.4·0.4/1.2.
  const { most } = risesOn(line, rear, front);
  expect(most.rise).toBeCloseTo((0.4 * 0.4) / 1.2, 9);
  expect(most.at).toBeCloseTo(90 - 1.6, 9);
});
