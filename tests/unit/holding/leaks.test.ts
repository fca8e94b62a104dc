/**
 * How long a standing train is held by brakes that leak off along a straight line. On the plane of 3 in 100 600 kg pull with
 * 147.1 N; a brake that holds twice that at 60 kPa and loses 10 Pa/s holds it until half is gone: 3,000 s.
 */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { standing } from '../../../engine/questions/brakes/standing.ts';
import { leakedGear } from '../../../engine/things/brake/reserve.ts';
import type { BrakeGear } from '../../../engine/things/vehicle/types.ts';
import { G, laid } from '../../support/on-a-fall.ts';
import { altered, rider } from '../../support/rules.ts';

const PULL = 600 * G * 0.025;
const vacuum = (force: number, leakRate?: number): BrakeGear => ({
  id: 'vacuum',
  name: 'vacuum',
  kind: 'automatic-vacuum',
  on: ['a', 'b'],
  workedBy: 'driver',
  parking: false,
  force: exact(force),
  rigging: {
    cylinders: 1,
    bore: 0.1,
    leverRatio: 1,
    efficiency: exact(1),
    block: 'composition',
    workingPressure: exact(60_000),
    ...(leakRate === undefined ? {} : { leakRate }),
  },
});
/** The engine's screw holds nothing; a screw on the first car, vacuum on the last. */
function train(screw: number, brake: BrakeGear): Outing {
  const outing = laid({ screw: exact(screw), adhesion: exact(1) });
  return altered(altered(outing, 0, { brakes: [] }), 2, { brakes: [brake] });
}
const held = (outing: Outing) => standing(openOuting(outing));

describe('a brake that leaks', () => {
  it('holds until the line of its leak has met the pull', () => {
    expect(held(train(1e-9, vacuum(2 * PULL, 10))).time).toBeCloseTo(3000, -1);
    expect(held(train(1e-9, vacuum(4 * PULL, 10))).time).toBeCloseTo(4500, -1);
    expect(held(train(1e-9, vacuum(2 * PULL, 20))).time).toBeCloseTo(1500, -1);
  });
  it('is helped by the guard’s screw, and by no rider’s', () => {
    const screwed = train(PULL / 2, vacuum(2 * PULL, 10));
    expect(held(screwed).time).toBeCloseTo(3000, -1);
    const guard = rider('g', '1', {
      vehicle: screwed.train.vehicles[1].id,
      duty: 'guard',
      mass: exact(1e-6),
    });
    expect(held({ ...screwed, riders: [guard] }).time).toBeCloseTo(4500, -1);
  });
  it('of whose leak nobody knows holds no time, and is named', () => {
    const told = held(train(1e-9, vacuum(2 * PULL)));
    expect(told.time).toBe(0);
    expect(told.unmeasured).toMatchObject([{ vehicle: 2, gear: { id: 'vacuum' } }]);
  });
  it('is not needed where what does not leak holds', () => {
    const outing = laid({ screw: exact(1.01 * PULL) });
    expect(held(outing)).toMatchObject({ time: Infinity, unmeasured: [] });
    expect(held(outing).parking).toBeCloseTo(1.01 * PULL, 3);
    // Screw and rolling resistance against the weight.
    const slope = (1.01 * PULL + 600 * G * 0.005) / (600 * G);
    expect(held(outing).parkingGrade).toBeCloseTo(Math.tan(Math.asin(slope)), 6);
  });
});

it('after a time a gear has its pressure less what leaked, no less than nothing, and a screw has all', () => {
  const after = (time: number): BrakeGear | undefined => leakedGear(vacuum(200, 10), time);
  expect(after(3000)?.force?.value).toBeCloseTo(100, 9);
  expect(after(9000)?.force?.value).toBe(0);
  const { force: _, ...parts } = vacuum(200, 10);
  expect(leakedGear(parts, 1500)?.rigging?.workingPressure.value).toBe(45_000);
  expect(leakedGear(vacuum(200), 10)).toBeUndefined();
  const screw: BrakeGear = { ...vacuum(200, 10), parking: true };
  expect(leakedGear(screw, 9000)).toBe(screw);
  const lever: BrakeGear = { ...vacuum(200), kind: 'mechanical' };
  expect(leakedGear(lever, 9000)).toBe(lever);
});
