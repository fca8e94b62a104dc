/** A line read at a chainage, run the other way, cut and joined: figures by hand. All made up. */
import { describe, expect, it } from 'vitest';
import {
  cantAt,
  curvatureAt,
  heightAt,
  lastBefore,
  onLine,
  reverseLine,
  wideningAt,
} from '../../../engine/things/line/geometry.ts';
import { joined, pieceOf } from '../../../engine/things/line/pieces.ts';
import { layPlan, planCurvature, type Spot, spotAt } from '../../../engine/things/line/plan.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import { isSparse, versineAt, verticalCurves, verticalRadius } from '../../../engine/things/line/vertical.ts';
import { randomOuting } from '../../support/random-outings.ts';

const base = randomOuting(1, 1).line;
const line: Line = {
  ...base,
  loop: false,
  length: 100,
  heights: [
    { at: 0, height: 1 },
    { at: 40, height: 3 },
    { at: 100, height: 0 },
  ],
  curves: [
    { from: 10, to: 20, startCurvature: 0, endCurvature: 0.1, gaugeWidening: 0.002 },
    { from: 20, to: 30, startCurvature: -0.05, endCurvature: -0.05, gaugeWidening: 0.003 },
  ],
  cants: [
    { at: 10, cant: 0 },
    { at: 20, cant: 0.02 },
    { at: 50, cant: -0.01 },
  ],
  places: [
    { id: 't', name: 't', kind: 'tunnel', at: 30, to: 45, sight: 7, stop: false },
    { id: 's', name: 's', kind: 'station', at: 60, sightReverse: 9, stop: true },
  ],
  speedLimits: [{ from: 5, to: 25, speed: 2, why: 'w', source: 's' }],
  sights: [
    { from: 0, to: 30, distance: 20, direction: 'forward' },
    { from: 40, to: 50, distance: 10, direction: 'both' },
    { from: 60, to: 90, distance: 15, direction: 'reverse' },
  ],
  flangeways: [{ id: 'f', name: 'f', at: 12 }],
  structures: [{ id: 'p', name: 'p', from: 70, to: 75, side: 'left', distance: 1, bottom: 0 }],
  sidings: [{ id: 'l', name: 'l', side: 'right', spacings: [2, 8].map((at) => ({ at, spacing: at / 4 })) }],
  railStretches: [{ from: 80, to: 95, state: 'wet' }],
};
const loop: Line = { ...line, loop: true };

describe('at a chainage', () => {
  it('the last item at or before it', () => {
    const items = [1, 2, 2, 5].map((at) => ({ at }));
    expect([0, 1, 1.5, 2, 4.9, 5, 9].map((s) => lastBefore(items, s))).toEqual([0, 0, 0, 2, 2, 3, 3]);
  });

  it('a loop goes round, a line does not', () => {
    expect([-30, 0, 99, 100, 250].map((s) => onLine(loop, s))).toEqual([70, 0, 99, 0, 50]);
    expect([-30, 250].map((s) => onLine(line, s))).toEqual([-30, 250]);
  });

  it('heights lie straight between points, and go on beyond the ends as they end', () => {
    const found = [0, 20, 40, 70, 100, -10, 120].map((s) => heightAt(line, s));
    expect(found).toEqual([1, 2, 3, 1.5, 0, 0.5, -1].map((h) => expect.closeTo(h, 12)));
    expect(heightAt(loop, 110)).toBeCloseTo(1.5, 12);
    expect(heightAt(loop, -30)).toBeCloseTo(1.5, 12);
  });

  it('curvature grows evenly in a transition; a curve has its beginning, not its end', () => {
    const found = [9.9, 10, 15, 20, 29.9, 30].map((s) => curvatureAt(line, s));
    expect(found).toEqual([0, 0, 0.05, -0.05, -0.05, 0].map((k) => expect.closeTo(k, 12)));
    expect(curvatureAt(loop, 115)).toBeCloseTo(0.05, 12);
    expect(curvatureAt(line, 115)).toBe(0);
    expect([9.9, 10, 20, 20.1, 30, 30.1].map((s) => wideningAt(line, s))).toEqual([
      0, 0.002, 0.003, 0.003, 0.003, 0,
    ]);
    const curve = (from: number, to: number, gaugeWidening: number) => ({
      ...{ from, to, gaugeWidening },
      ...{ startCurvature: 0.05, endCurvature: 0.05 },
    });
    const seam = { ...loop, curves: [curve(0, 10, 0.001), curve(90, 100, 0.004)] };
    expect([0, 10, 90, 99, 100].map((s) => wideningAt(seam, s))).toEqual([0.004, 0.001, 0.004, 0.004, 0.004]);
    expect(wideningAt({ ...seam, loop: false }, 0)).toBe(0.001);
  });

  it('cant is straight between its points, and what it is at the first and last beyond them', () => {
    const found = [0, 10, 15, 20, 35, 50, 90].map((s) => cantAt(line, s));
    expect(found).toEqual([0, 0, 0.01, 0.02, 0.005, -0.01, -0.01].map((c) => expect.closeTo(c, 12)));
    expect(cantAt({ ...line, cants: [] }, 20)).toBe(0);
    expect(cantAt({ ...line, cants: [{ at: 30, cant: 0.01 }] }, 5)).toBe(0.01);
    expect(cantAt({ ...line, cants: [{ at: 30, cant: 0.01 }] }, 50)).toBe(0.01);
  });
});

describe('run the other way', () => {
  const back = reverseLine(line);
  it('every place reads the same from the other end, left for right', () => {
    for (const s of [3, 12, 17, 25, 33, 48, 77]) {
      expect(heightAt(back, 100 - s)).toBeCloseTo(heightAt(line, s), 12);
      expect(curvatureAt(back, 100 - s)).toBeCloseTo(-curvatureAt(line, s), 12);
      expect(cantAt(back, 100 - s)).toBeCloseTo(-cantAt(line, s), 12);
    }
  });

  it('what stands along it lies at the other end, on the other side, seen the other way', () => {
    expect(back.places).toEqual([
      { id: 's', name: 's', kind: 'station', at: 40, sight: 9, stop: true },
      { id: 't', name: 't', kind: 'tunnel', at: 55, to: 70, sightReverse: 7, stop: false },
    ]);
    expect(back.speedLimits).toMatchObject([{ from: 75, to: 95, speed: 2 }]);
    expect(back.sights.map((s) => [s.from, s.to, s.direction])).toEqual([
      [10, 40, 'forward'],
      [50, 60, 'both'],
      [70, 100, 'reverse'],
    ]);
    expect(back.flangeways?.map((f) => f.at)).toEqual([88]);
    expect(back.structures).toMatchObject([{ from: 25, to: 30, side: 'right' }]);
    expect(back.sidings).toMatchObject([
      {
        side: 'left',
        spacings: [
          { at: 92, spacing: 2 },
          { at: 98, spacing: 0.5 },
        ],
      },
    ]);
    expect(back.railStretches).toMatchObject([{ from: 5, to: 20 }]);
    const both = { ...line, structures: [{ ...(line.structures ?? [])[0], side: 'both' as const }] };
    expect(reverseLine(both).structures?.[0].side).toBe('both');
    expect(reverseLine(back)).toEqual(line);
  });
});

describe('a piece of a line', () => {
  const piece = pieceOf(line, 15, 65);
  it('reads as the line does, from nothing on', () => {
    expect([piece.length, piece.loop]).toEqual([50, false]);
    for (const s of [0, 4, 8, 20, 30, 44, 50]) {
      expect(heightAt(piece, s)).toBeCloseTo(heightAt(line, 15 + s), 12);
      expect(cantAt(piece, s)).toBeCloseTo(cantAt(line, 15 + s), 12);
      expect(curvatureAt(piece, s)).toBeCloseTo(curvatureAt(line, 15 + s), 12);
    }
    expect(piece.heights.map((k) => k.at)).toEqual([0, 25, 50]);
  });

  it('has of what stands along it what lies in it', () => {
    expect(piece.places.map((p) => [p.id, p.at, p.to])).toEqual([
      ['t', 15, 30],
      ['s', 45, undefined],
    ]);
    expect(pieceOf(line, 35, 40).places.map((p) => [p.id, p.at, p.to])).toEqual([['t', 0, 5]]);
    expect(pieceOf(line, 46, 59).places).toEqual([]);
    expect(pieceOf(line, 45, 60).places.map((p) => p.id)).toEqual(['t', 's']);
    expect(piece.speedLimits).toMatchObject([{ from: 0, to: 10 }]);
    expect(pieceOf(line, 25, 40).speedLimits).toEqual([]);
    expect(piece.sights.map((s) => [s.from, s.to])).toEqual([
      [0, 15],
      [25, 35],
      [45, 50],
    ]);
    expect(piece.structures).toEqual([]);
    expect(pieceOf(line, 72, 90)).toMatchObject({
      structures: [{ from: 0, to: 3 }],
      railStretches: [{ from: 8, to: 18 }],
    });
    expect(piece.flangeways).toEqual([]);
    expect(pieceOf(line, 12, 20).flangeways?.map((f) => f.at)).toEqual([0]);
    expect(pieceOf(line, 2, 8).sidings?.[0].spacings.map((s) => s.at)).toEqual([0, 6]);
    expect(pieceOf(line, 3, 8).sidings).toEqual([]);
    const post = { id: 'p', name: 'p', from: 15, to: 15, side: 'left' as const, bottom: 0 };
    for (const [from, to, at] of [
      [15, 20, [0]],
      [10, 15, [5]],
      [16, 20, []],
    ] as const)
      expect(pieceOf({ ...line, structures: [post] }, from, to).structures?.map((s) => s.from)).toEqual(at);
  });

  it('goes no farther than a line does, and round a loop as often as is asked', () => {
    expect(pieceOf(line, -20, 300).length).toBe(100);
    const over = pieceOf(loop, 90, 215);
    expect(over.length).toBeCloseTo(125, 12);
    expect(over.places.map((p) => [p.id, p.at])).toEqual([
      ['t', 40],
      ['s', 70],
    ]);
    expect(over.curves.map((c) => [c.from, c.to])).toEqual([
      [20, 30],
      [30, 40],
      [120, 125],
    ]);
    // What goes over the origin is in two.
    const wet = { ...loop, railStretches: [{ from: 95, to: 5, state: 'wet' as const }] };
    expect(pieceOf(wet, 90, 110).railStretches?.map((r) => [r.from, r.to])).toEqual([
      [5, 10],
      [10, 15],
    ]);
    expect(pieceOf(loop, 190, 195).railStretches?.map((r) => [r.from, r.to])).toEqual([[0, 5]]);
  });
});

describe('pieces laid one after the other', () => {
  const two = joined([pieceOf(line, 0, 20), pieceOf(line, 60, 100)]);
  it('are as long as both, the second as high as the first ends, its things moved on', () => {
    expect(two.length).toBe(60);
    expect(two.heights).toEqual(
      [
        [0, 1],
        [20, 2],
        [60, 0],
      ].map(([at, height]) => ({ at, height: expect.closeTo(height, 12) })),
    );
    expect(two.places.map((p) => [p.id, p.at])).toEqual([['s', 20]]);
    expect(two.structures?.map((s) => [s.from, s.to])).toEqual([[30, 35]]);
    expect(two.railStretches?.map((r) => [r.from, r.to])).toEqual([[40, 55]]);
    expect(two.sights.map((s) => [s.from, s.to])).toEqual([
      [0, 20],
      [20, 50],
    ]);
    const tunnel = joined([pieceOf(line, 0, 20), pieceOf(line, 25, 60)]).places[0];
    expect([tunnel.at, tunnel.to]).toEqual([25, 40]);
  });

  it('cant of the one goes over into that of the other within a hand’s breadth; of none there is none', () => {
    expect(cantAt(two, 20)).toBeCloseTo(0.02, 12);
    expect(cantAt(two, 20.1)).toBeCloseTo(-0.01, 9);
    expect(cantAt(two, 20.05)).toBeCloseTo(0.005, 9);
    const level = { ...pieceOf(line, 60, 100), cants: [] };
    const out = joined([pieceOf(line, 0, 20), level]);
    expect([cantAt(out, 20), cantAt(out, 20.1), cantAt(out, 60)]).toEqual(
      [0.02, 0, 0].map((c) => expect.closeTo(c, 9)),
    );
    expect(joined([level, level]).cants).toEqual([]);
    const short = joined([pieceOf(line, 0, 20), pieceOf(line, 60, 60.1)]);
    expect(cantAt(short, 20.05)).toBeCloseTo(-0.01, 9);
    // Where both are alike nothing is put between.
    expect(
      joined([pieceOf(line, 0, 30), pieceOf(line, 30, 60)]).cants.filter((k) => k.at === 30),
    ).toHaveLength(1);
  });
});

describe('the plan', () => {
  const spot: Spot = { x: 0, y: 0, cos: 1, sin: 0 };
  const round = {
    ...line,
    curves: [{ from: 10, to: 60, startCurvature: 0.1, endCurvature: 0.1, gaugeWidening: 0 }],
  };

  it('of a curve lies on its circle, and goes on straight from where it ends', () => {
    const plan = layPlan(round, -5, 110);
    // Begins 5 m before the line, the curve 15 m on, its middle 10 m to the left.
    for (const s of [10, 13, 40, 60]) {
      spotAt(plan, s, spot);
      const turn = (s - 10) / 10;
      expect([spot.x, spot.y, spot.cos, spot.sin]).toEqual(
        [15 + 10 * Math.sin(turn), 10 - 10 * Math.cos(turn), Math.cos(turn), Math.sin(turn)].map((v) =>
          expect.closeTo(v, 7),
        ),
      );
    }
    spotAt(plan, 72, spot);
    expect(spot.x).toBeCloseTo(15 + 10 * Math.sin(5) + 12 * Math.cos(5), 7);
    spotAt(plan, 0, spot);
    expect([spot.x, spot.y]).toEqual([5, 0].map((v) => expect.closeTo(v, 12)));
    expect([9, 10, 59, 61].map((s) => planCurvature(plan, s, spot))).toEqual(
      [0, 0.1, 0.1, 0].map((k) => expect.closeTo(k, 12)),
    );
  });

  it('of a transition follows the sum of small steps', () => {
    const curves = [{ from: 0, to: 30, startCurvature: -0.02, endCurvature: 0.12, gaugeWidening: 0 }];
    const plan = layPlan({ ...line, curves }, 0, 100);
    let [x, y] = [0, 0];
    const h = 0.01;
    for (let i = 0; i < 2500; i++) {
      const s = (i + 0.5) * h;
      const turn = -0.02 * s + (0.14 / 60) * s * s;
      x += h * Math.cos(turn);
      y += h * Math.sin(turn);
    }
    spotAt(plan, 25, spot);
    expect([spot.x, spot.y]).toEqual([x, y].map((v) => expect.closeTo(v, 4)));
    expect(planCurvature(plan, 15, spot)).toBeCloseTo(0.05, 12);
  });

  it('of a loop goes on over its origin, before and behind', () => {
    const ring = {
      ...round,
      loop: true,
      length: 2 * Math.PI * 10,
      curves: [{ ...round.curves[0], from: 0, to: 2 * Math.PI * 10 }],
    };
    const plan = layPlan(ring, -20, 150);
    for (const s of [-20, -3, 30, 70, 140]) expect(planCurvature(plan, s, spot)).toBeCloseTo(0.1, 9);
    const a: Spot = { ...spot };
    spotAt(plan, 5, a);
    spotAt(plan, 5 + ring.length, spot);
    expect(Math.hypot(spot.x - a.x, spot.y - a.y)).toBeLessThan(1e-7);
  });
});

describe('how sharply it bends upward or downward', () => {
  it('stands off the middle of an edge by what the heights say; radius by the parabola', () => {
    // Crest at 40: 1 in 20 up, 1 in 20 down; 2 m of edge: half of 0.05 + 0.05 on 1 m.
    expect(versineAt(line, 40, 2)).toBeCloseTo(0.05, 12);
    expect(versineAt(line, 20, 2)).toBeCloseTo(0, 12);
    expect(verticalRadius(2, 0.05)).toBeCloseTo(10, 12);
    expect(verticalRadius(2, -0.05)).toBeCloseTo(10, 12);
    expect(verticalRadius(2, 0)).toBe(Infinity);
  });

  it('two points of the survey within reach are not few; on a loop its origin is near its end, and is one with it', () => {
    const heights = [0, 0.5, 40, 43, 100].map((at) => ({ at, height: 0 }));
    const sparse = (at: number, reach: number, round = false) =>
      isSparse({ ...line, heights, loop: round, length: 100 }, at, reach);
    expect([sparse(40, 3), sparse(40, 2.9), sparse(41.5, 1.5)]).toEqual([false, true, false]);
    expect([sparse(99, 1.6), sparse(99, 1.6, true), sparse(1, 0.9, true)]).toEqual([true, false, true]);
    expect(sparse(99, 1, true)).toBe(true);
  });

  it('sharpest first, no two nearer than the edge is long, no more than are asked for', () => {
    const heights = [
      [0, 0],
      [10, 0.5],
      [20, 0.2],
      [21, 0.2],
      [40, 0.4],
      [60, 0.4],
    ].map(([at, height]) => ({ at, height }));
    const bent = { ...line, length: 60, heights };
    const found = verticalCurves(bent, 2, 9);
    expect(found.map((c) => [c.at, c.lie])).toEqual([
      [10, 'crest'],
      [20, 'sag'],
      [40, 'crest'],
    ]);
    expect(found[0].radius).toBeCloseTo(2 / (2 * 0.08), 9);
    expect(found.map((c) => c.sparse)).toEqual([true, false, true]);
    expect(verticalCurves(bent, 2, 2)).toHaveLength(2);
    expect(verticalCurves(bent, 0.5, 9).map((c) => c.at)).toEqual([10, 20, 21, 40]);
    expect(
      verticalCurves({ ...bent, heights: [0, 30, 60].map((at) => ({ at, height: at * 0.01 })) }, 2, 9),
    ).toEqual([]);
  });
});
