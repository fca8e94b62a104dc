/** A route over the tracks of a line, as one line that everything else is answered on. All made up. */
import { describe, expect, it } from 'vitest';
import { heightAt } from '../../../engine/things/line/geometry.ts';
import { layPlan, spotAt } from '../../../engine/things/line/plan.ts';
import { BEYOND, type Move, wayOver } from '../../../engine/things/line/route.ts';
import type { Joint, Line, Structure, Track } from '../../../engine/things/line/types.ts';
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
const TRAIN = 8;
const moves = (ids: readonly string[], over: Line = line): readonly Move[] => {
  const found = wayOver(over, ids, TRAIN);
  if ('lacks' in found) throw new Error(`${found.at} ${found.lacks}`);
  return found;
};
const way = (ids: readonly string[], over: Line = line): Line => {
  const [first, ...others] = moves(ids, over);
  expect(others).toEqual([]);
  return first.line;
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
  expect(wayOver(line, ['loop', 'road'], TRAIN)).toEqual({ at: 1, lacks: 'way' });
  expect(wayOver(line, ['main', 'yard'], TRAIN)).toEqual({ at: 1, lacks: 'track' });
  expect(wayOver({ ...line, tracks: [{ ...tilted, start: bare }] }, ['main', 'loop'], TRAIN)).toEqual({
    at: 1,
    lacks: 'turnout',
  });
  expect(wayOver({ ...line, tracks: [ends] }, ['main', 'road'], TRAIN)).toEqual({ at: 1, lacks: 'heights' });
});

describe('sets back', () => {
  const into = moves(['main', 'road']);

  it('over points that lie behind it, drawn clear of them by its length and a pace', () => {
    expect(into.map(({ back }) => back)).toEqual([false, true]);
    const beyond = 40 + TRAIN + BEYOND;
    expect(into.map((m) => m.line.length)).toEqual([beyond, TRAIN + BEYOND + 30]);
    // It rises by 1 in 100 to where it stops, and comes down again before it runs into the road.
    const [out, back] = into.map((m) => m.line);
    expect(heightAt(out, beyond)).toBeCloseTo(beyond / 100, 9);
    expect(heightAt(back, 0)).toBeCloseTo(beyond / 100, 9);
    expect(heightAt(back, TRAIN + BEYOND)).toBeCloseTo(0.4, 9);
    expect(heightAt(back, back.length)).toBeCloseTo(0.1, 9);
  });

  it('out of a road that it drew into, and goes on the other way', () => {
    const facing: Track = { ...trailing, start: { ...trailing.start, facing: true } };
    const out = moves(['main', 'road', 'main'], { ...line, tracks: [facing] });
    // Into the road by its length and a pace, and back over the line to its beginning.
    expect(out.map((m) => m.line.length)).toEqual([40 + TRAIN + BEYOND, TRAIN + BEYOND + 40]);
    expect(out[1].legs.map(({ id, along }) => [id, along])).toEqual([
      ['road', -1],
      ['main', -1],
    ]);
  });

  it('twice, to run round a loop: it ends as it began', () => {
    expect(moves(['main', 'loop', 'main', 'loop']).map(({ back }) => back)).toEqual([false, true]);
  });

  it('is refused where the train has no room beyond the points', () => {
    const short = { ...line, length: 47, heights: [line.heights[0], { at: 47, height: 0.47 }] };
    expect(wayOver({ ...short, tracks: [trailing] }, ['main', 'road'], TRAIN)).toEqual({
      at: 1,
      lacks: 'room',
      room: 7,
      takes: TRAIN + BEYOND,
    });
  });
});

describe('what stands along the tracks', () => {
  const post = (name: string, changes: Partial<Structure> = {}): Structure => ({
    id: name,
    name,
    from: 60,
    to: 60,
    side: 'left',
    distance: 0.6,
    bottom: 0,
    ...changes,
  });
  const asked = (main: Partial<Line>, own: Partial<Line>): readonly string[] => {
    const track = { ...tilted, line: { ...tilted.line, ...own } };
    return (way(['main', 'loop', 'main'], { ...line, ...main, tracks: [track] }).unstated ?? []).map(
      ({ track: of, lacks, near }) => `${of}: ${near ?? lacks}`,
    );
  };

  it('goes with the way, at its distances', () => {
    const structures = [post('lamp', { from: 30, to: 31 })];
    const track = { ...tilted, line: { ...tilted.line, structures } };
    const over = way(['main', 'loop', 'main'], { ...line, tracks: [track] });
    expect(over.structures).toMatchObject([{ name: 'lamp', from: 70, to: 71 }]);
  });

  it('is asked of the line where a track alone tells it', () => {
    const sights = [{ from: 0, to: 60, distance: 20, direction: 'both' as const }];
    expect([...new Set(asked({}, { sights }))]).toEqual([`${line.name}: sights`]);
  });

  it('is asked where it stands near a track that does not name it, and not far off or on the other side', () => {
    // The loop lies 1.2 m to the left.
    expect(asked({ structures: [post('wall')] }, { structures: [] })).toEqual(['Loop: wall']);
    expect(asked({ structures: [post('wall')] }, { structures: [post('wall')] })).toEqual([]);
    expect(asked({ structures: [post('shed', { side: 'right' })] }, { structures: [] })).toEqual([]);
    expect(asked({ structures: [post('far', { from: 150, to: 150 })] }, { structures: [] })).toEqual([]);
    // On a long line too, where it stands between any two places that are looked at.
    const far = { ...line, length: 5000, heights: [line.heights[0], { at: 5000, height: 2 }] };
    const besideMain = post('stump', { from: 71.3, to: 71.3, side: 'right', distance: 1.4 });
    const over = way(['main'], {
      ...far,
      structures: [],
      tracks: [{ ...tilted, line: { ...tilted.line, structures: [besideMain] } }],
    });
    // 1.2 m to the left of the line, and 1.4 m to its right: 0.2 m beyond the line.
    expect((over.unstated ?? []).map((u) => u.near)).toEqual(['stump']);
    const bridge = post('bridge', { side: 'both', headroom: 2 });
    const { distance: _, ...overhead } = bridge;
    expect(asked({ structures: [overhead] }, { structures: [] })).toEqual(['Loop: bridge']);
  });
});
