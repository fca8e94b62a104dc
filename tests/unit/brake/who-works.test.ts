/** Who works a brake: what the driver's arm does not reach, and what only parks, stops nothing. */

import { describe, expect, it } from 'vitest';
import { stopFrom } from '../../../desk/stops.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { countCars } from '../../../engine/answer/counts.ts';
import { inquire } from '../../../engine/answer/inquiry.ts';
import type { CarCount } from '../../../engine/answer/types.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { gearStates } from '../../../engine/things/brake/system.ts';
import { railStates } from '../../../engine/things/rail.ts';
import { driverReach } from '../../../engine/things/train/crew.ts';
import type { BrakeGear, Vehicle } from '../../../engine/things/vehicle/types.ts';
import {
  changedExample,
  type OutingPaper,
  type VehiclePaper,
  vehiclesOf,
} from '../../support/changed-examples.ts';
import { factOf } from '../../support/facts.ts';
import { runs } from '../../support/tier.ts';

const sixCars = (paper: OutingPaper): void => {
  for (const member of paper.train.vehicles) if (member.vehicle.role === 'car') member.count = 6;
  paper.riders = paper.riders.filter((r) => r.duty === 'driver');
};
const withScrews =
  (more: object = {}) =>
  (paper: OutingPaper): void => {
    sixCars(paper);
    for (const v of vehiclesOf(paper)) {
      if (v.role === 'car')
        v.brakes = [{ name: 'screw', kind: 'mechanical', parking: true, force: '60 lbf', ...more }];
    }
  };
const stop = (outing: Outing): number => stopFrom(outing, 1600 * 0.3048, 6 * 0.44704).cautious.distance;
const gear = (changes: Partial<BrakeGear>): BrakeGear => ({
  id: 'hand',
  name: 'hand brake',
  kind: 'mechanical',
  on: [],
  force: exact(200),
  workedBy: 'driver',
  parking: false,
  ...changes,
});
const answering = (outing: Outing): string[] =>
  gearStates(outing).flatMap((s) => (s.answers ? [outing.train.vehicles[s.vehicle].id] : []));
const braked = (outing: Outing, on: (v: Vehicle) => boolean, of: BrakeGear): Outing => ({
  ...outing,
  train: {
    ...outing.train,
    vehicles: outing.train.vehicles.map((v) => (on(v) ? { ...v, brakes: [of] } : { ...v, brakes: [] })),
  },
});
/** Of the first rails; on a push of two. */
const counted = (outing: Outing, rails = runs(2, railStates.length)): readonly CarCount[] =>
  countCars(inquire(outing), railStates.slice(0, rails));
const isEngine = (v: Vehicle): boolean => v.role === 'engine';

describe('parking screws on the cars', () => {
  it('stop nothing, whoever is said to work them', async () => {
    const bare = await changedExample('steam-light', sixCars);
    const usual = await changedExample('steam-light', withScrews());
    expect(stop(usual)).toBe(stop(bare));
    expect(stop(await changedExample('steam-light', withScrews({ workedBy: 'driver' })))).toBe(stop(bare));
    // Not parking either: a hand brake on a car is its rider's.
    expect(stop(await changedExample('steam-light', withScrews({ parking: false })))).toBe(stop(bare));
    const [before, after] = [counted(bare), counted(usual)];
    expect(after.map((c) => c.stopped)).toEqual(before.map((c) => c.stopped));
    const note = answerOuting(usual, { remedies: false, counts: false }).findings.find(
      (f) => f.code === 'brake-not-worked-by-driver' && factOf(f, 'gear') === 'screw',
    );
    expect(String(factOf(note, 'vehicles')).split(', ').length).toBe(6);
  });

  it('hold with everybody at them, and by the driver alone as if they were not there', async () => {
    const [bare, screws] = [
      counted(await changedExample('steam-light', sixCars), 1)[0],
      counted(await changedExample('steam-light', withScrews()), 1)[0],
    ];
    expect(screws.held).toBe(bare.held);
    expect(screws.heldByDriver).toBe(bare.heldByDriver);
    expect(screws.unlimited).toContain('heldByAll');
  });

  it('offered as a remedy add no stopping power', async () => {
    const bare = await changedExample('steam-light', sixCars);
    for (const { id } of bare.train.vehicles) {
      const fitted = applyChange(bare, { kind: 'parking-brake', vehicle: id, force: 400 });
      expect(stop(fitted), id).toBe(stop(bare));
    }
  });
});

describe('of whom nobody has said that they work it', () => {
  it('a brake worked by arm is whose seat it is beside, and a train brake the driver’s', async () => {
    const kinds = ['mechanical', 'engine-only', 'automatic-air', 'surge'];
    const workers = async (change: (v: VehiclePaper) => void): Promise<string[]> => {
      const outing = await changedExample('steam-light', (paper) => {
        for (const v of vehiclesOf(paper)) {
          if (v.role === 'engine') continue;
          v.brakes = kinds.map((kind) => ({ name: kind, kind, force: '60 lbf' }));
          change(v);
        }
      });
      return outing.train.vehicles[1].brakes.map((b) => b.workedBy);
    };
    const through = ['driver', 'driver'];
    expect(await workers(() => undefined)).toEqual(['rider', 'rider', ...through]);
    expect(await workers((v) => Object.assign(v, { role: 'guard' }))).toEqual(['guard', 'guard', ...through]);
    expect(await workers((v) => Object.assign(v, { role: 'tender' }))).toEqual([
      'driver',
      'driver',
      ...through,
    ]);
    const seat = { name: 'd', at: '1 ft', height: '10 in', driver: true };
    expect(await workers((v) => Object.assign(v, { seats: [seat, ...(v['seats'] as object[])] }))).toEqual([
      'driver',
      'driver',
      ...through,
    ]);
  });
});

describe('the guard', () => {
  it('counts with a brake on the guard’s own car, wherever the count ends', async () => {
    const outing = await changedExample('heavy-air', () => undefined);
    const [dry] = counted(outing, 1);
    expect(dry.heldByDriver).toBe(3);
    expect(dry.held).toBeGreaterThan(3);
    expect(dry.held).toBeLessThan(10);
    const alone = { ...outing, riders: outing.riders.filter((r) => r.duty !== 'guard') };
    expect(counted(alone, 1)[0].held).toBe(3);
  });
});

describe('the driver’s reach', () => {
  it('is the own vehicle, and its engine and tender', async () => {
    const base = await changedExample('steam-light', () => undefined);
    const roles = (...list: Vehicle['role'][]): Outing => ({
      ...base,
      train: {
        ...base.train,
        vehicles: list.map((role, i) => ({ ...base.train.vehicles[0], role, id: `${i}`, seats: [] })),
      },
      riders: [],
    });
    const driverOn = (outing: Outing, ...at: number[]): number[] => {
      const driver = base.riders.find((r) => r.duty === 'driver');
      if (!driver) throw new Error('no driver');
      const riders = at.map((i) => ({ ...driver, id: `d${i}`, vehicle: `${i}` }));
      return [...driverReach({ ...outing, riders })].sort();
    };
    const whole = roles('engine', 'tender', 'car', 'car');
    expect(driverOn(whole, 0)).toEqual([0, 1]);
    expect(driverOn(whole, 1)).toEqual([0, 1]);
    expect(driverOn(whole, 2)).toEqual([0, 1, 2]);
    expect(driverOn(whole, 3)).toEqual([3]);
    expect(driverOn(roles('engine', 'engine', 'car'), 1)).toEqual([1]);
    expect(driverOn(roles('engine', 'engine', 'car'), 0, 1)).toEqual([0, 1]);
    expect(driverOn(roles('engine', 'car'), 1)).toEqual([0, 1]);
    // Nobody named: on the first engine.
    expect([...driverReach(roles('car', 'engine', 'tender'))]).toEqual([1, 2]);
  });

  it('decides over brakes worked by arm and over the engine’s own', async () => {
    const base = await changedExample('steam-light', () => undefined);
    const { vehicles } = base.train;
    const onLast = {
      ...base,
      riders: base.riders.map((r) =>
        r.duty === 'driver' ? { ...r, vehicle: vehicles[vehicles.length - 1].id } : r,
      ),
    };
    for (const kind of ['mechanical', 'engine-only'] as const) {
      expect(answering(braked(base, isEngine, gear({ kind })))).toEqual([vehicles[0].id]);
      expect(answering(braked(onLast, isEngine, gear({ kind })))).toEqual([]);
      expect(answering(braked(base, (v) => !isEngine(v), gear({ kind })))).toEqual([]);
    }
  });

  it('takes a latching lever into the stop, and no screw', async () => {
    const base = await changedExample('steam-light', () => undefined);
    const lever = { leverRatio: 6, efficiency: exact(0.8), block: 'cast-iron' as const };
    const of = (changes: Partial<BrakeGear>): string[] =>
      answering(braked(base, isEngine, gear({ parking: true, ...changes })));
    expect(of({})).toEqual([]);
    expect(of({ hand: { ...lever, wheelRadius: 0.06, screwLead: 0.004 } })).toEqual([]);
    expect(of({ hand: lever })).toEqual([base.train.vehicles[0].id]);
  });
});
