/** Speeds that are set, not reckoned: whose is the lowest, and from where to where it holds. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { HIGHEST_LOOKED_AT, hostCeilings, runningSpeed } from '../../../engine/questions/speed/ceilings.ts';
import { altered, plain, rule } from '../../support/rules.ts';

const MPH = 0.44704;
const base = plain(2);
/** 100 m, a point at every metre; the train is 6.8 m long. */
const level = [
  { at: 0, height: 0 },
  { at: 100, height: 0 },
];
const grid = Float64Array.from({ length: 101 }, (_, j) => j);
function on(changes: Partial<Outing>, loop = false, line: Partial<Outing['line']> = {}): Outing {
  return { ...base, ...changes, line: { ...base.line, loop, length: 100, heights: level, ...line } };
}
const speeds = (outing: Outing): Float64Array => {
  const context = openOuting(outing);
  return runningSpeed(context, grid, hostCeilings(context, grid));
};
/** Runs of points at which the speed is this: the first and the last of each. */
const where = (outing: Outing, speed: number): [from: number, to: number][] => {
  const slow = [...speeds(outing)].map((v) => v === speed);
  const ends = (beside: number) => slow.flatMap((is, j) => (is && !slow[j + beside] ? [j] : []));
  const last = ends(1);
  return ends(-1).map((first, i) => [first, last[i]]);
};
const limit = (from: number, to: number) => ({ from, to, speed: 1, why: 'curve', source: 'rule 4' });
const host = { name: 'host', speed: rule(3) };

it('the train is as long as is said here', () =>
  expect(openOuting(on({})).loaded.length).toBeCloseTo(6.8, 9));

describe('the lowest of what is set', () => {
  it('where nobody states a speed, is what is assumed, or planned where that is more', () => {
    expect(speeds(on({}))[50]).toBe(base.assumed.unstatedSpeed);
    expect(speeds(on({ plannedSpeed: 5 }))[50]).toBe(5);
    expect(speeds(on({ plannedSpeed: 2 }))[50]).toBe(2);
    expect(speeds(on({ plannedSpeed: 99 }))[50]).toBe(HIGHEST_LOOKED_AT);
    expect(HIGHEST_LOOKED_AT).toBeCloseTo(20 * MPH, 12);
  });
  it('is the host’s, or no more than is looked at', () => {
    expect(speeds(on({ host }))[50]).toBe(3);
    expect(speeds(on({ host: { ...host, speed: rule(99) } }))[50]).toBe(HIGHEST_LOOKED_AT);
  });
  it('is the slowest vehicle’s rating', () => {
    const rated = altered(altered(on({ host }), 1, { ratings: { speed: 2.5 } }), 2, {
      ratings: { speed: 2 },
    });
    expect(speeds(rated)[50]).toBe(2);
    const reasons = hostCeilings(openOuting(rated), grid).map((c) => [c.reason.kind, c.reason.what]);
    expect(reasons).toEqual([
      ['looked-no-higher', 'highest speed looked at'],
      ['host-line', 'host'],
      ['vehicle', 'car2'],
    ]);
  });
  it('on a stretch with a limit of its own is that limit, though nobody states one for the line', () => {
    const fast = { ...limit(20, 30), speed: 6 };
    const outing = on({}, false, { speedLimits: [fast] });
    expect(speeds(outing)[25]).toBe(6);
    expect(speeds(outing)[50]).toBe(base.assumed.unstatedSpeed);
  });
});

describe('a limit on a stretch', () => {
  it('holds until the last car has left it', () =>
    expect(where(on({ host }, false, { speedLimits: [limit(20, 30)] }), 1)).toEqual([[20, 36]]));
  it('on a loop holds over its origin', () =>
    expect(where(on({ host }, true, { speedLimits: [limit(90, 96)] }), 1)).toEqual([
      [0, 2],
      [90, 100],
    ]));
  it('that with the train is longer than the loop holds everywhere', () =>
    expect(where(on({ host }, true, { speedLimits: [limit(10, 4)] }), 1)).toEqual([[0, 100]]));
  it('agreed in the line’s own chainage is turned with the train', () => {
    const agreed = { host, extraLimits: [{ from: 20, to: 30, speed: 1 }] } as Partial<Outing>;
    expect(where(on(agreed), 1)).toEqual([[20, 36]]);
    expect(where(on({ ...agreed, direction: 'reverse' }), 1)).toEqual([[70, 86]]);
  });
});
