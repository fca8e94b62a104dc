/**
 * How joint draws become a careful figure, by draws made by hand: twenty trains, of which each has so much left for the grade
 * as it is numbered, on a line whose grade is told node by node.
 */

import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import {
  carefulAt,
  type Draws,
  failsAt,
  headAt,
  lackingWork,
  mostFailing,
  nodesOf,
  type Pulls,
  resistance,
} from '../../../engine/questions/haul/draws.ts';
import {
  type Booked,
  bookedStops,
  type Start,
  startsAt,
  stretches,
} from '../../../engine/questions/haul/start.ts';
import type { RailState } from '../../../engine/things/rail.ts';
import { base, G } from '../../support/on-a-climb.ts';
import { assumedValues } from '../../support/random-outings.ts';

/** A node each 2 m; what curves pull besides stands under `curves`. */
function pulled(grades: readonly number[], curves: readonly number[] = grades.map(() => 0)): Pulls {
  const slope = Float64Array.from(grades);
  const common = { from: 10, step: 2, count: grades.length, value: new Float64Array(grades.length) };
  const curved = { ...common, slope: slope.map((s, i) => s + curves[i]) };
  return { grade: { ...common, slope }, curved, length: 10 + 2 * (grades.length - 1) } as unknown as Pulls;
}
/** Spare of 1 to 20 N, not in order, and a pull of a hundred times as much. */
const SPARE = Float64Array.from({ length: 20 }, (_, i) => ((7 * i) % 20) + 1);
function drawnWith(more: Partial<Draws> = {}, curve = 1): Draws {
  const by = <T>(of: T): ReadonlyMap<RailState, T> => new Map([['dry' as const, of]]);
  return {
    speed: 0,
    steepest: 0,
    pull: by(SPARE.map((s) => 100 * s)),
    spare: by(SPARE),
    curve: new Float64Array(20).fill(curve),
    most: { curve, least: by(1) },
    railAt: () => 'dry',
    likelyPull: () => 0,
    morePull: () => 0,
    ...more,
  };
}

describe('a share of draws', () => {
  it('fails that has less left than grade and curve take; what has as much does not', () => {
    const pulls = pulled([1, 1.5, 5, 5.5, 30], [0, 0, 0, 0, 0]);
    expect([0, 1, 2, 3, 4].map((node) => failsAt(drawnWith(), pulls, node))).toEqual([0, 0.05, 0.2, 0.25, 1]);
  });
  it('pays for the curve by its own draw', () => {
    const pulls = pulled([2, 2], [3, 0]);
    expect(failsAt(drawnWith({}, 2), pulls, 0)).toBe(7 / 20);
    expect(failsAt(drawnWith({}, 2), pulls, 1)).toBe(1 / 20);
    // A curve that a train runs out of gives nothing back beyond its own.
    expect(failsAt(drawnWith({}, 0.5), pulls, 0)).toBe(3 / 20);
  });
  it('is told by the one that one in twenty falls short of', () => {
    // The weakest of twenty has 1 N left, the second 2 N: 4 N of grade lack 2 N there.
    expect(carefulAt(drawnWith(), pulled([4]), 0)).toEqual({ pull: 200, need: 202 });
    expect(carefulAt(drawnWith(), pulled([1], [2]), 0)).toEqual({ pull: 200, need: 201 });
  });
});

describe('where most fail', () => {
  it('is told by the first of nodes alike, and only of those that count', () => {
    const pulls = pulled([3, 8, 5, 8]);
    expect(mostFailing(drawnWith(), pulls)).toEqual({ node: 1, fails: 7 / 20 });
    expect(mostFailing(drawnWith(), pulls, (node) => node !== 1)).toEqual({ node: 3, fails: 7 / 20 });
    expect(mostFailing(drawnWith(), pulls, (node) => node % 2 === 0)).toEqual({ node: 2, fails: 4 / 20 });
    expect(mostFailing(drawnWith(), pulls, () => false)).toBeUndefined();
  });
  it('is on the worse rail though another place is steeper', () => {
    const onIce: Draws = drawnWith({
      spare: new Map([
        ['dry', SPARE],
        ['greasy', SPARE.map((s) => s - 10)],
      ]),
      most: {
        curve: 1,
        least: new Map([
          ['dry', 1],
          ['greasy', -9],
        ]),
      },
      railAt: (node) => (node === 2 ? 'greasy' : 'dry'),
    });
    // 5 N where ten less are left against 8 N.
    expect(mostFailing(onIce, pulled([3, 8, 5, 8]))).toEqual({ node: 2, fails: 14 / 20 });
  });
});

describe('work that is lacking', () => {
  it('is that of all nodes in a row about one, both ways, and of no other row', () => {
    const lacks = [4, -1, 3, 5, 2, 0, 9];
    const work = (node: number) => lackingWork((j) => lacks[j], node, pulled(lacks));
    expect(work(3)).toBe(2 * (3 + 5 + 2));
    expect(work(2)).toBe(2 * (3 + 5 + 2));
    expect(work(0)).toBe(2 * 4);
    expect(work(6)).toBe(2 * 9);
    // A node that lacks nothing lies between two that do.
    expect(work(1)).toBe(2 * (4 + 3 + 5 + 2));
  });
});

describe('nodes', () => {
  it('lie a step apart, and none beyond the end of the line', () => {
    const pulls = pulled([0, 0, 0, 0]);
    expect(headAt(pulls, 3)).toBe(16);
    expect(nodesOf(pulls)).toBe(4);
    expect(nodesOf({ ...pulls, length: 15.9 })).toBe(3);
    expect(nodesOf({ ...pulls, length: 14 })).toBe(3);
    expect(nodesOf({ ...pulls, length: 400 })).toBe(4);
  });
});

const start = { drawn: drawnWith() } as unknown as Start;

describe('stretches on which starts fail', () => {
  it('are one where no more than 5 m lie between, and fail as their worst place does', () => {
    // A node each 2 m, from 10 m. Four between are 10 m, two are 6, one is 4.
    const grades = [0, 3, 9, 0, 4, 0, 0, 5, 0];
    expect(stretches(start, pulled(grades))).toEqual([
      { from: 12, to: 18, fails: 8 / 20 },
      { from: 24, to: 24, fails: 4 / 20 },
    ]);
  });
  it('do not begin before more than one in twenty fail', () => {
    expect(stretches(start, pulled([2, 2]))).toEqual([]);
    expect(stretches(start, pulled([2, 2.5]))).toEqual([{ from: 12, to: 12, fails: 0.1 }]);
  });
});

describe('a stop', () => {
  const fare = (at: number, grades = [0, 4, 0, 9]) =>
    startsAt(start, pulled(grades), [{ name: 'Halt', at }]).map(({ node, fails }) => [node, fails]);
  it('between two nodes fares as the worse of them', () => {
    expect(fare(11)).toEqual([[1, 3 / 20]]);
    expect(fare(13)).toEqual([[1, 3 / 20]]);
    expect(fare(15)).toEqual([[3, 8 / 20]]);
    expect(fare(14)).toEqual([[2, 0]]);
  });
  it('is asked where one must stop or may be made to', () => {
    const { line, loaded } = openOuting(base);
    const place = (name: string, kind: 'station' | 'signal' | 'crossing', stop: boolean) => ({
      id: name,
      name,
      kind,
      at: 50,
      stop,
    });
    const places = [
      place('Stop', 'station', true),
      place('Passed', 'station', false),
      place('Signal', 'signal', false),
      place('Road', 'crossing', false),
    ];
    const asked = (changes: object): readonly Booked[] =>
      bookedStops({ loaded, line: { ...line, places, ...changes } as unknown as typeof line });
    expect(asked({ loop: false, length: 400 })).toEqual([
      { name: 'the start of the run', at: loaded.length },
      { name: 'Stop', at: 50 },
      { name: 'Signal', at: 50 },
      { name: 'Road', at: 50 },
    ]);
    expect(asked({ loop: true, length: 400 })[0].at).toBe(0);
    expect(asked({ loop: false, length: 1 })[0].at).toBe(1);
  });
});

describe('resistance of one train', () => {
  const context = openOuting(base);
  const withAll = (of: object, starting = 2) => ({
    ...context,
    outing: {
      ...context.outing,
      assumed: {
        ...context.outing.assumed,
        startingByBearing: { ...context.outing.assumed.startingByBearing, ball: exact(starting) },
      },
    },
    loaded: {
      ...context.loaded,
      vehicles: context.loaded.vehicles.map((v) => ({
        ...v,
        mass: 100,
        vehicle: { ...v.vehicle, bearing: 'ball' as const, resistance: of as typeof v.vehicle.resistance },
      })),
    },
  });
  const count = context.loaded.vehicles.length;
  const known = { rolling: exact(0.005), perSpeed: exact(0.001), perSpeedSquared: 3 };
  it('at a stand is rolling by the bearing, or what was measured of a start alone', () => {
    expect(resistance(withAll(known), () => 0, 0)).toBeCloseTo(count * 100 * G * 0.005 * 2, 9);
    expect(resistance(withAll({ ...known, starting: exact(0.02) }), () => 0, 0)).toBeCloseTo(
      count * 100 * G * 0.02,
      9,
    );
  });
  it('at a speed grows with it by weight, and with its square whatever the weight', () => {
    expect(resistance(withAll(known), () => 0, 4)).toBeCloseTo(
      count * (100 * G * (0.005 + 0.004) + 3 * 16),
      9,
    );
  });
  it('is drawn once for rolling and once for the start, each of each vehicle: at a speed alike', () => {
    const drawn = (of: object, speed: number): number => {
      let times = 0;
      resistance(withAll(of), () => (times++, 0), speed);
      return times;
    };
    expect([drawn(known, 0), drawn(known, 3)]).toEqual([2 * count, 2 * count]);
    expect(drawn({ ...known, starting: exact(0.02) }, 0)).toBe(count);
    const spread = { ...known, rolling: { ...exact(0.005), low: 0.004, high: 0.008 } };
    expect(resistance(withAll(spread), () => 1, 0)).toBeCloseTo(count * 100 * G * 0.008 * 2, 9);
  });
});

it('a brisk walk is 3 miles an hour', () =>
  expect(assumedValues.practice['kept-speed'].value).toBeCloseTo(3 * 0.44704, 9));
