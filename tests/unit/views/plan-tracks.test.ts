/** Tracks beside the line on its plan, on a drawing of a metre to the pixel: the line along x, its left hand up. All made up. */
import { expect, it } from 'vitest';
import type { Line, Track } from '../../../engine/things/line/types.ts';
import type { Fitted } from '../../../views/plan/fit.ts';
import { drawnTracks } from '../../../views/plan/tracks.ts';
import { beside } from '../../support/beside.ts';
import { loopRoad, roadThatEnds, straight } from '../../support/tracks.ts';

const line = straight(beside({}).line);
const fitted: Fitted = { scale: 1, middle: [0, 0], at: (s) => ({ x: s, y: 0, left: [0, -1] }) };
const drawn = (tracks: readonly Track[], of: Line = line) => drawnTracks({ ...of, tracks }, fitted);

it('leads a loop from its first points to its last, on the side that it leaves to', () => {
  const [{ points, name }] = drawn([loopRoad(line, 1.2)]);
  expect(name).toBe('Loop');
  const [first, middle, last] = [points[0], points[points.length >> 1], points[points.length - 1]];
  expect(first).toEqual([40, 0]);
  expect(Math.abs(middle[0] - 70)).toBeLessThan(0.5);
  expect(middle[1]).toBeCloseTo(-1.2, 6);
  expect(last.map((v) => Math.abs(v))).toEqual([expect.closeTo(100, 6), expect.closeTo(0, 6)]);
});

it('spreads what the survey of a loop misses, and comes to its last points all the same', () => {
  const loop = loopRoad(line, 1.2);
  const end = loop.end && { ...loop.end, at: 101 };
  const [{ points }] = drawn([{ ...loop, ...(end ? { end } : {}) }]);
  expect(points[points.length - 1][0]).toBeCloseTo(101, 6);
  const [{ points: sound }] = drawn([loop]);
  const middle = points.length >> 1;
  expect(points[middle][0] - sound[middle][0]).toBeCloseTo(0.5, 1);
});

it('leaves backward where the points trail, and to the other side', () => {
  const road = roadThatEnds(line);
  const [{ points }] = drawn([{ ...road, start: { ...road.start, facing: false } }]);
  const [x, y] = points[points.length - 1];
  expect(x).toBeLessThan(12);
  expect(y).toBeGreaterThan(4);
});

it('draws a track that leaves another, and none whose points are not measured', () => {
  const road = roadThatEnds(line);
  const off: Track = { ...road, id: 'off', name: 'Off', start: { ...road.start, track: 'road', at: 10 } };
  const both = drawn([off, road]);
  expect(both.map((t) => t.name)).toEqual(['Road', 'Off']);
  const [, tenMetres] = [both[0].points[0], both[1].points[0]];
  expect(Math.hypot(tenMetres[0] - 40, tenMetres[1])).toBeCloseTo(10, 1);
  const { turnout: _, ...bare } = road.start;
  expect(drawn([{ ...road, start: bare }, off])).toEqual([]);
});
