/** A route over the tracks of a line, as one line that everything else is answered on. All made up. */
import { describe, expect, it } from 'vitest';
import { heightAt } from '../../../engine/things/line/geometry.ts';
import { layPlan, spotAt } from '../../../engine/things/line/plan.ts';
import { wayOver } from '../../../engine/things/line/route.ts';
import type { Joint, Line, Track } from '../../../engine/things/line/types.ts';
import { beside } from '../../support/beside.ts';
import { loopRoad, roadThatEnds, straight } from '../../support/tracks.ts';

const base: Line = {
  ...straight(beside({}).line),
  heights: [
    { at: 0, height: 0 },
    { at: 200, height: 2 },
  ],
  speedLimits: [{ from: 90, to: 120, speed: 2, why: 'bend', source: 'board' }],
};
const loop: Track = {
  ...loopRoad(base, 1.2),
  levelled: true,
};
const tilted: Track = {
  ...loop,
  line: {
    ...loop.line,
    heights: [
      { at: 0, height: 0.4 },
      { at: loop.line.length, height: 1 },
    ],
    speedLimits: [{ from: 0, to: loop.line.length, speed: 1, why: 'loop', source: 'board' }],
  },
};
const ends = roadThatEnds(base, { hand: 'right' });
/** Leaves against the distances of the line. */
const trailing: Track = {
  ...ends,
  levelled: true,
  start: { ...ends.start, facing: false },
  line: {
    ...ends.line,
    speedLimits: [],
    heights: [
      { at: 0, height: 0.4 },
      { at: 30, height: 0.1 },
    ],
  },
};
const line: Line = { ...base, tracks: [tilted, trailing] };
const way = (ids: readonly string[], over: Line = line): Line => {
  const found = wayOver(over, ids);
  if ('lacks' in found) throw new Error(`${found.at} ${found.lacks}`);
  return found;
};

describe('over a loop', () => {
  const over = way(['main', 'loop', 'main']);
  it('is as long as what it runs over', () => {
    expect(over.length).toBeCloseTo(40 + loop.line.length + 100, 9);
    expect(over.loop).toBe(false);
  });

  it('comes out where the line goes on, pointing as it does', () => {
    const spot = { x: 0, y: 0, cos: 1, sin: 0 };
    spotAt(layPlan(over, 0, over.length), over.length, spot);
    expect([spot.x, spot.y, spot.sin].map((v) => v.toFixed(6).replace('-0.0', '0.0'))).toEqual([
      '200.000000',
      '0.000000',
      '0.000000',
    ]);
  });

  it('has heights, limits and curves of each along it, and none of what it leaves out', () => {
    expect(heightAt(over, 40)).toBeCloseTo(0.4, 9);
    expect(heightAt(over, 40 + loop.line.length)).toBeCloseTo(1, 9);
    expect(heightAt(over, over.length)).toBeCloseTo(2, 9);
    expect(over.speedLimits.map((l) => [l.from, l.to, l.speed])).toEqual([
      [40, 40 + loop.line.length, 1],
      [40 + loop.line.length, 40 + loop.line.length + 20, 2],
    ]);
    expect(over.curves[0].from).toBeCloseTo(40 + loop.line.curves[0].from, 9);
  });
});

it('begins in a road that trails into the line, run against its own distances', () => {
  const out = way(['road', 'main']);
  expect(out.length).toBe(190);
  expect([0, 30, 190].map((s) => heightAt(out, s))).toEqual([0.1, 0.4, 2].map((h) => expect.closeTo(h, 9)));
  // To the right seen from the tips: coming out it turns to the right as well.
  expect(Math.sign(out.curves[0].startCurvature)).toBe(
    Math.sign(trailing.line.curves[0].startCurvature) * -1,
  );
});

it('ends in a loop, at the tips of its last points', () => {
  expect(way(['main', 'loop']).length).toBeCloseTo(40 + loop.line.length, 9);
});

it('closes with a line that closes', () => {
  const round: Line = {
    ...line,
    loop: true,
    heights: [
      { at: 0, height: 0 },
      { at: 200, height: 0 },
    ],
  };
  const over = way(['main', 'loop', 'main'], round);
  expect(over.loop).toBe(true);
  expect(over.length).toBeCloseTo(140 + loop.line.length, 9);
});

it('is none where points do not lead on, are not measured, or nobody took heights', () => {
  const { turnout: _, ...bare } = tilted.start as Joint;
  expect(wayOver(line, ['main', 'road'])).toEqual({ at: 1, lacks: 'way' });
  expect(wayOver(line, ['main', 'yard'])).toEqual({ at: 1, lacks: 'track' });
  expect(wayOver({ ...line, tracks: [{ ...tilted, start: bare }] }, ['main', 'loop'])).toEqual({
    at: 1,
    lacks: 'turnout',
  });
  expect(wayOver({ ...line, tracks: [ends] }, ['main', 'road'])).toEqual({ at: 1, lacks: 'heights' });
  // Points behind the train.
  expect(wayOver(line, ['main', 'loop', 'main', 'loop'])).toEqual({ at: 3, lacks: 'way' });
});
