/** Where coupled ends stand farthest out of line: every place tried as the witness; tilt told and counted. All made up. */
import { describe, expect, it } from 'vitest';
import { type EndOnTrack, endOnTrack, riseOver, risesOn } from '../../../engine/things/coupler/crest.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import { crested, crestsOf, knuckle } from '../../support/crested.ts';
import { drawer, randomOuting } from '../../support/random-outings.ts';

const draw = drawer(4);
const base = randomOuting(1, 1).line;
const rough = (loop: boolean): Line => {
  const ats = Array.from({ length: 20 }, (_, i) => (i * 40) / 19);
  const heights = ats.map((at) => ({ at, height: draw(-0.05, 0.05) }));
  if (loop) heights[19] = { at: 40, height: heights[0].height };
  return {
    ...base,
    loop,
    length: 40,
    curves: [],
    heights,
    cants: [0, 9, 21, 33].map((at) => ({ at, cant: draw(-0.01, 0.01) })),
  };
};
const ahead: EndOnTrack = { near: [0.3, 0.7], far: [1.9, 2.3], lever: 0.3 };
const behind: EndOnTrack = { near: [0.4], far: [1.7], lever: 0.25 };

describe('the two extremes of a line', () => {
  it('no place stands farther out, tilt and all, and both are reached', () => {
    for (const loop of [false, true])
      for (let n = 0; n < 4; n++) {
        const line = rough(loop);
        const tiltAt = (at: number): number => 0.2 * Math.abs(((at + 40) % 40) - 20) * 1e-3;
        const { most, least } = risesOn(line, ahead, behind, tiltAt);
        const riseAt = riseOver(line, ahead, behind);
        expect(most.rise).toBeCloseTo(riseAt(most.at), 12);
        expect(least.rise).toBeCloseTo(riseAt(least.at), 12);
        expect([most.tilt, least.tilt]).toEqual(
          [tiltAt(most.at), tiltAt(least.at)].map((t) => expect.closeTo(t, 12)),
        );
        const [from, to] = loop ? [0, 40] : [1.7, 40 - 2.3];
        let [high, low] = [-Infinity, Infinity];
        for (let i = 0; i <= 4000; i++) {
          const at = from + ((to - from) * i) / 4000;
          const rise = riseAt(at);
          high = Math.max(high, rise + tiltAt(at));
          low = Math.min(low, rise - tiltAt(at));
        }
        // The tilt of this test turns at 20 m, where no knot need lie: by 0.2 mm a metre.
        expect(Math.abs(most.rise + most.tilt - high)).toBeLessThan(3e-4);
        expect(Math.abs(least.rise - least.tilt - low)).toBeLessThan(3e-4);
        expect(most.rise + most.tilt).toBeGreaterThan(0);
        expect(least.rise - least.tilt).toBeLessThan(0);
      }
  });

  it('the ends of a line count, and a train that does not fit stands nowhere', () => {
    const ramp = (at: number): Line => ({
      ...rough(false),
      cants: [],
      heights: [0, at, 40].map((s) => ({ at: s, height: Math.max(0, s - at) * 0.1 })),
    });
    // Only the foremost axle has passed the foot of the climb at the end of the line.
    const { most, least } = risesOn(ramp(39.9), ahead, behind);
    expect(most).toMatchObject({ rise: 0 });
    expect(least.at).toBeCloseTo(40 - 2.3, 9);
    expect(least.rise).toBeCloseTo(-0.3 * (0.1 * 0.1) * 0.5, 9);
    const short = { ...ramp(1), length: 3 };
    expect(risesOn(short, ahead, behind)).toEqual({
      most: { rise: 0, tilt: 0, at: 1.7 },
      least: { rise: 0, tilt: 0, at: 1.7 },
    });
  });
});

describe('an end on its track', () => {
  const [vehicle] = crested(
    [0, 100].map((at) => ({ at, height: 0 })),
    [
      { length: 3, overhang: 0.6, base: 0.4 },
      { length: 2, overhang: 0.5 },
    ],
  ).train.vehicles;
  it('has its axles as far from the coupler as they lie, and its overhang over the guides', () => {
    const nearly = (of: readonly number[]) => of.map((v) => expect.closeTo(v, 12));
    for (const end of ['front', 'rear'] as const) {
      const found = endOnTrack(vehicle, end);
      expect([...(found?.near ?? [])].sort()).toEqual(nearly([0.4, 0.8]));
      expect([...(found?.far ?? [])].sort()).toEqual(nearly([2.2, 2.6]));
      expect(found?.lever).toBeCloseTo(0.6 / 1.8, 12);
    }
    const odd = { ...vehicle, groups: vehicle.groups.map((g, i) => (i === 0 ? { ...g, at: 0.3 } : g)) };
    expect(endOnTrack(odd, 'front')?.lever).toBeCloseTo(0.3 / 2.1, 12);
    expect(endOnTrack(odd, 'rear')?.lever).toBeCloseTo(0.6 / 2.1, 12);
    expect(
      endOnTrack({ ...vehicle, groups: [{ ...vehicle.groups[0], axles: 1, wheelBase: 0 }] }, 'rear'),
    ).toBeUndefined();
  });
});

describe('tilt by cant that changes', () => {
  const shapes = [
    { length: 3, overhang: 0.6 },
    { length: 3, overhang: 0.6 },
  ];
  const flat = [0, 30, 60].map((at) => ({ at, height: 0 }));
  const tilted = (run: number, on = [knuckle(0.11), knuckle(0.11)], more: Partial<Line> = {}) => {
    const outing = crested(flat, shapes, on);
    const cants = [
      { at: 0, cant: 0 },
      { at: 30, cant: 0 },
      { at: 30 + run, cant: 0.02 },
      { at: 60, cant: 0.02 },
    ];
    return crestsOf({ ...outing, line: { ...outing.line, cants, ...more } });
  };

  it('counts beside what the line lifts: it holds so much less, and half of a face limits', () => {
    const { data, findings } = tilted(4);
    const [gap] = data.gaps;
    expect(gap.tilt).toBeGreaterThan(5e-4);
    expect(gap.apart).toBeCloseTo(0, 9);
    expect(gap.hold?.held).toBeCloseTo(0.03 - gap.tilt, 9);
    expect(findings).toEqual([]);
  });

  it('without a face is asked for by all that they stand apart', () => {
    const { face: _, ...bare } = knuckle(0.11);
    const usual = 0.09734513274336283 * crested(flat, shapes).line.gauge;
    const { data, findings } = tilted(0.2, [{ ...bare, height: 0.11 + usual }, bare]);
    const [gap] = data.gaps;
    const finding = findings.find((f) => f.code === 'coupler-face-unknown');
    expect(gap.apart).toBeCloseTo(usual, 9);
    expect(finding?.found?.si).toBeCloseTo(usual + gap.tilt, 9);
    expect(finding?.severity).toBe('limits');
    expect(finding?.facts).toMatchObject({ tilt: { si: gap.tilt } });
  });

  it('as they stand in the yard nothing was added: not told here', () => {
    const stated = crestsOf(crested(flat, shapes, [knuckle(0.13), knuckle(0.11)]));
    expect(stated.data.gaps[0].apart).toBeCloseTo(0.02, 9);
    expect(stated.findings).toEqual([]);
    // With the tilt of a change of cant something is.
    const added = tilted(4, [knuckle(0.13), knuckle(0.11)]);
    expect(added.findings.map((f) => f.code)).toEqual(['couplers-slip-by']);
  });
});
