/** Assumed times on a long pipe: against the filling of made-up trains by their parts, which shares nothing with the rule. */
import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../data/index.ts';
import { withCars } from '../../../engine/answer/with-cars.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { fillTrain } from '../../../engine/things/brake/fill.ts';
import { gearGroups } from '../../../engine/things/brake/force.ts';
import { airKinds, type BrakeKind } from '../../../engine/things/brake/kinds/index.ts';
import { gearStates } from '../../../engine/things/brake/system.ts';
import { gearTimes } from '../../../engine/things/brake/times.ts';
import { loadTrain } from '../../../engine/things/train/loaded.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { brakedTrain } from '../../support/braked-trains.ts';
import { plain } from '../../support/rules.ts';

const { pipe, brakeParts } = assumedValues;

/** s until nine tenths of the last brake of so many. */
const filled = (kind: (typeof airKinds)[number], n: number): number =>
  fillTrain(loadTrain(brakedTrain(kind, n), []), kind, 'apply', 101_325, brakeParts).gears.at(-1)!.t90;

describe('a pipe twice as long', () => {
  it.each(airKinds)('of %s fills so much later as is assumed', (kind) => {
    const times = [10, 20, 40].map((n) => filled(kind, n));
    for (const [i, before] of times.slice(0, -1).entries()) {
      const power = Math.log2(times[i + 1] / before);
      expect(power).toBeGreaterThan(pipe.growth.low);
      expect(power).toBeLessThan(pipe.growth.high);
    }
  });
});

/** A train of so many vehicles with one kind of brake, of which no time is known. */
const braked = (kind: BrakeKind, n: number): Vehicle[] =>
  Array.from({ length: n }, (_, i) => ({
    ...plain(1).train.vehicles[1],
    id: `${i}`,
    brakes: [{ id: 'b', name: 'b', kind, on: ['a'], workedBy: 'driver', parking: false }],
  }));

describe('assumed times', () => {
  const of = (kind: BrakeKind, n: number) => {
    const vehicles = braked(kind, n);
    return gearTimes(vehicles[0].brakes[0], vehicles, assumedValues);
  };

  it('stand for a short pipe, and grow steadily with a longer one', () => {
    expect(of('simple-vacuum', 2)).toEqual(of('simple-vacuum', 10));
    expect(of('simple-vacuum', 10).buildUp).toEqual(assumedValues.buildUp['simple-vacuum']);
    let before = of('simple-vacuum', 10).buildUp;
    for (let n = 11; n <= 40; n++) {
      const { buildUp } = of('simple-vacuum', n);
      for (const key of ['low', 'value', 'high'] as const) {
        expect(buildUp[key]).toBeGreaterThan(before[key]);
        expect(buildUp[key] / before[key]).toBeLessThan(1.16);
      }
      before = buildUp;
    }
    // 40 are four times 10: by hand 2 s · 4^1.25, and 4 s · 4^1.5.
    expect(before).toMatchObject({ low: 4, value: expect.closeTo(11.3137, 3), high: 32 });
    expect(of('simple-vacuum', 40).deadTime.low).toBeCloseTo(1.6, 12);
  });

  it('of what has no pipe are as long as ever', () => {
    for (const kind of ['electric', 'mechanical', 'surge', 'engine-only'] as const)
      expect(of(kind, 40)).toEqual(of(kind, 1));
  });

  it('are those that a stop is reckoned with', () => {
    const outing = { ...plain(1), assumed: assumedValues };
    const vehicles = braked('straight-air', 20).map((v) => ({
      ...v,
      brakes: v.brakes.map((b) => ({ ...b, force: exact(100), on: [v.groups[0].id] })),
    }));
    const long = { ...outing, train: { ...outing.train, vehicles, couplings: [] } };
    const loaded = loadTrain(long.train, []);
    const at = gearStates(long).map(({ vehicle, gear }) => ({ vehicle, gear, alone: false }));
    const { groups } = gearGroups(loaded, at, assumedValues, 101_325, 101_325);
    expect(groups.length).toBe(20);
    for (const g of groups) expect(g.buildUp.high).toBeCloseTo(3 * 2 ** 1.5, 9);
  });
});

describe('with more cars than there are', () => {
  const outing = {
    ...plain(4),
    train: {
      ...plain(4).train,
      vehicles: plain(4).train.vehicles.map((v) => ({
        ...v,
        brakes: [
          {
            id: 'b',
            name: 'b',
            kind: 'straight-air' as const,
            workedBy: 'driver' as const,
            parking: false,
            on: [v.groups[0].id],
            force: exact(100),
            deadTime: exact(0.5),
            buildUp: exact(1),
          },
        ],
      })),
    },
  };
  const stated = (n: number) => withCars(outing, n)!.train.vehicles.at(-1)!.brakes[0];

  it('stated times were taken on the train as it is, and a longer one takes longer', () => {
    for (const n of [1, 2, 4]) expect(stated(n)).toMatchObject({ deadTime: exact(0.5), buildUp: exact(1) });
    // Nine vehicles with the engine, of five.
    expect(stated(8).buildUp).toMatchObject({ low: 1.8, value: 1.8 ** 1.25, high: 1.8 ** 1.5 });
    expect(openOuting(withCars(outing, 8)!).outing.train.vehicles[0].brakes[0].deadTime!.high).toBeCloseTo(
      0.5 * 1.8 ** 1.5,
      12,
    );
  });
});
