import { describe, expect, it } from 'vitest';
import { between, exact } from '../../../engine/base/quantity.ts';
import { rampOf, riggingBuildUp, timedTrain } from '../../../engine/things/brake/build-up-from-parts.ts';
import { fillTrain } from '../../../engine/things/brake/fill.ts';
import { gearForce } from '../../../engine/things/brake/force.ts';
import { handBlockForce, lagTime, surgeForce } from '../../../engine/things/brake/hand-and-push.ts';
import { pistonState } from '../../../engine/things/brake/piston.ts';
import { leakedGear, reserves, whenSupplyIsLost } from '../../../engine/things/brake/reserve.ts';
import { pushedBrakes } from '../../../engine/things/brake/run-in.ts';
import { drawDownTime, pumpUpTime } from '../../../engine/things/brake/vessel.ts';
import { loadTrain } from '../../../engine/things/train/loaded.ts';
import type { BrakeGear } from '../../../engine/things/vehicle/types.ts';
import { brakedTrain, loadedTrain, riggingFor } from '../../support/braked-trains.ts';
import { assumedValues } from '../../support/random-outings.ts';

const sea = 101_325;
const { brakeParts } = assumedValues;
const air = { pressure: sea, seaLevel: sea };

describe('piston', () => {
  const piston = { clearance: 1e-5, swept: 1e-4, strokeAt: 40_000 };

  it('stands in until pressed, and is out at the pressure of its spring', () => {
    expect(pistonState(piston, sea * 1e-5, { pressure: sea }).stroke).toBe(0);
    const out = pistonState(piston, (sea + 40_000) * 1.1e-4, { pressure: sea });
    expect(out.stroke).toBeCloseTo(1, 9);
    expect(out.pressure).toBeCloseTo(sea + 40_000, 3);
  });

  it('half way at half the pressure', () => {
    const { stroke, pressure } = pistonState(piston, (sea + 20_000) * 6e-5, { pressure: sea });
    expect(stroke).toBeCloseTo(0.5, 9);
    expect(pressure).toBeCloseTo(sea + 20_000, 3);
  });

  it('is drawn in by vacuum', () => {
    const half = pistonState(piston, (sea - 20_000) * 6e-5, { pressure: sea }, true);
    expect(half.stroke).toBeCloseTo(0.5, 9);
  });

  it('squeezes a closed chamber', () => {
    const chamber = { content: 40_000 * 1e-3, volume: 1e-3 };
    const { behind, stroke } = pistonState(piston, sea * 1.1e-4, chamber);
    expect(stroke).toBe(1);
    expect(behind).toBeCloseTo(40_000 / 0.9, 6);
  });
});

describe('arm, coupler and current', () => {
  const common = { leverRatio: 4, efficiency: exact(0.3), block: 'wood' as const };

  it('handwheel and screw: 150 N at 100 mm on a 5 mm lead', () => {
    const force = handBlockForce({ ...common, wheelRadius: 0.1, screwLead: 0.005 }, exact(150));
    expect(force.value).toBeCloseTo(150 * ((2 * Math.PI * 0.1) / 0.005) * 4 * 0.3, 6);
  });

  it('lever without screw', () => {
    expect(handBlockForce(common, between(100, 200, 300, 'measured')).low).toBeCloseTo(120, 9);
  });

  it('surge: push and brake share the deceleration', () => {
    const surge = { ...common, springForce: 50 };
    const { force, push } = surgeForce(surge, 400, 0.3, 0.8);
    expect(force + push).toBeCloseTo(400, 9);
    expect(force).toBeCloseTo(0.3 * 0.8 * 4 * (push - 50), 9);
    expect(surgeForce(surge, -100, 0.3, 0.8)).toEqual({ force: 0, push: 0 });
  });

  it('a lag of 1 s is at 63.2 % after 1 s', () => {
    expect(lagTime(1, 1 - Math.exp(-1))).toBeCloseTo(1, 12);
  });
});

describe('ramp in place of the curve', () => {
  it('passes the 10 % and 90 % points', () => {
    const { dead, build } = rampOf({ t10: 0.5, t90: 2.1 });
    expect(dead + 0.1 * build).toBeCloseTo(0.5, 12);
    expect(dead + 0.9 * build).toBeCloseTo(2.1, 12);
  });

  it('gives every car its own, later towards the rear', () => {
    const ramps = riggingBuildUp(loadedTrain('straight-air', 5), sea, brakeParts);
    expect(ramps.map((r) => r.vehicle)).toEqual([1, 2, 3, 4, 5]);
    expect(ramps[4].deadTime.value).toBeGreaterThan(ramps[0].deadTime.value);
    for (const { deadTime, buildUp } of ramps) {
      expect(deadTime.low).toBeLessThanOrEqual(deadTime.value);
      expect(buildUp.high).toBeGreaterThan(buildUp.value);
    }
  });

  it('leaves stated times alone', () => {
    const train = brakedTrain('straight-air', 1);
    const stated = { deadTime: exact(0.4), buildUp: exact(1.5) };
    const vehicles = train.vehicles.map((v) => ({
      ...v,
      brakes: v.brakes.map((b) => ({ ...b, ...stated })),
    }));
    expect(riggingBuildUp(loadTrain({ ...train, vehicles }, []), sea, brakeParts)).toEqual([]);
  });

  it('says how much force a small reservoir leaves', () => {
    const [small] = riggingBuildUp(
      loadedTrain('automatic-air', 1, { reservoirVolume: 5e-5 }),
      sea,
      brakeParts,
    );
    const [large] = riggingBuildUp(
      loadedTrain('automatic-air', 1, { reservoirVolume: 5e-3 }),
      sea,
      brakeParts,
    );
    expect(small.forceShare).toBeLessThan(0.5);
    expect(large.forceShare).toBe(1);
  });

  it('electric rises by its lag', () => {
    const gear: BrakeGear = {
      id: 'e',
      name: 'e',
      kind: 'electric',
      on: ['a'],
      force: exact(100),
      lag: exact(0.4),
      workedBy: 'driver',
      parking: false,
    };
    const train = brakedTrain('straight-air', 1);
    const vehicles = train.vehicles.map((v, i) => (i === 1 ? { ...v, brakes: [gear] } : v));
    const [ramp] = riggingBuildUp(loadTrain({ ...train, vehicles }, []), sea, brakeParts);
    expect(ramp.buildUp.value).toBeCloseTo((0.4 * Math.log(9)) / 0.8, 9);
  });
});

describe('filling', () => {
  it('names the part that is missing instead of guessing it', () => {
    const fill = fillTrain(
      loadedTrain('automatic-vacuum', 2, { chamberVolume: undefined as never }),
      'automatic-vacuum',
      'apply',
      sea,
      brakeParts,
    );
    expect(fill.gears).toEqual([]);
    expect(fill.missing.map((m) => m.part)).toEqual(['rigging.chamberVolume', 'rigging.chamberVolume']);
  });

  it("without the ejector's rate there is no fill, and one thing to measure", () => {
    const train = loadedTrain('simple-vacuum', 3, {}, { rate: undefined as never });
    const fill = fillTrain(train, 'simple-vacuum', 'apply', sea, brakeParts);
    expect(fill.gears).toEqual([]);
    expect(fill.missing).toEqual([{ vehicle: 0, part: 'brakeSupply.rate' }]);
    // Letting the air in again needs no ejector.
    expect(fillTrain(train, 'simple-vacuum', 'release', sea, brakeParts).gears).toHaveLength(3);
  });

  it('asks once for the charge of the pipe', () => {
    const train = loadedTrain('automatic-air', 3, {}, { pressure: undefined as never });
    expect(fillTrain(train, 'automatic-air', 'apply', sea, brakeParts).missing).toEqual([
      { vehicle: 0, part: 'brakeSupply.pressure' },
    ]);
  });

  it('says the force at the blocks: piston less spring, lever, efficiency', () => {
    const [g] = fillTrain(loadedTrain('straight-air', 1), 'straight-air', 'apply', sea, brakeParts).gears;
    const piston = (Math.PI / 4) * 0.05 ** 2 * g.pressure - 80;
    expect(g.block / (piston * 3 * 0.8)).toBeCloseTo(1, 9);
  });

  it('fills nothing behind a parted hose', () => {
    const train = { ...brakedTrain('straight-air', 4), pipeBrokenAfter: [2] };
    const { gears } = fillTrain(loadTrain(train, []), 'straight-air', 'apply', sea, brakeParts);
    expect(gears.map((g) => g.vehicle)).toEqual([1, 2]);
  });

  it('runs both ways from an engine in the middle', () => {
    const train = brakedTrain('straight-air', 4);
    const [engine, a, b, c, d] = train.vehicles;
    const { gears } = fillTrain(
      loadTrain({ ...train, vehicles: [a, b, engine, c, d] }, []),
      'straight-air',
      'apply',
      sea,
      brakeParts,
    );
    const t = new Map(gears.map((g) => [g.vehicle, g.t90]));
    expect(t.get(0)).toBeCloseTo(t.get(4) ?? 0, 1);
    expect(t.get(0)).toBeGreaterThan(t.get(1) ?? 9);
  });

  it('an application draws the vacuum that the ejector allows, no more', () => {
    const { gears } = fillTrain(loadedTrain('simple-vacuum', 3), 'simple-vacuum', 'apply', sea, brakeParts);
    for (const g of gears) expect(Math.abs(g.pressure / 65_000 - 1)).toBeLessThan(0.01);
    const weak = fillTrain(
      loadedTrain('simple-vacuum', 3, {}, { greatestVacuum: 40_000 }),
      'simple-vacuum',
      'apply',
      sea,
      brakeParts,
    );
    for (const g of weak.gears) expect(Math.abs(g.pressure / 40_000 - 1)).toBeLessThan(0.01);
  });

  it('one large cylinder by ejector takes about the draw-down time of its volume', () => {
    const rigging = { pipeVolume: 1e-6, cylinderVolume: 0.02, chokeDiameter: 0.012, springForce: 0 };
    const [g] = fillTrain(
      loadedTrain('simple-vacuum', 1, rigging),
      'simple-vacuum',
      'apply',
      sea,
      brakeParts,
    ).gears;
    const swept = (Math.PI / 4) * 0.1 ** 2 * 0.04;
    const lowest = sea - 80_000;
    const expected = drawDownTime(0.02 - swept, 0.004, sea, sea - 0.9 * 65_000, lowest);
    // The pipe, its resistance and the first stroke add a little.
    expect(g.t90).toBeGreaterThan(expected * 0.98);
    expect(g.t90).toBeLessThan(expected * 1.15);
  });
});

describe('reserve', () => {
  it('main reservoir: each application takes the air that it fills', () => {
    const [main] = reserves(loadedTrain('straight-air', 2), sea);
    expect(main.full).toBeGreaterThan(3);
    expect(main.useful).toBeGreaterThanOrEqual(main.full);
    const [less] = reserves(loadedTrain('straight-air', 8), sea);
    expect(less.full).toBeLessThan(main.full);
  });

  it('car reservoirs: from the equalised pressure down', () => {
    const [car] = reserves(loadedTrain('automatic-air', 1, { reservoirVolume: 1e-3 }), sea);
    expect(car.full).toBeGreaterThanOrEqual(1);
    expect(car.pressures[1]).toBeLessThan(car.pressures[0]);
  });

  it('a compressor fills 10 L to 5 bar at 0.5 L/s in 98.7 s', () => {
    expect(pumpUpTime(0.01, 5e-4, sea, sea + 500_000, sea)).toBeCloseTo((0.01 * 500_000) / (sea * 5e-4), 9);
  });

  it('leaks on a straight line, never below nothing; parking brakes stay', () => {
    const gear = brakedTrain('automatic-vacuum', 1, { leakRate: 100 }).vehicles[1].brakes[0];
    expect(leakedGear(gear, 100)?.rigging?.workingPressure.value).toBe(55_000);
    expect(leakedGear(gear, 1e6)?.rigging?.workingPressure.value).toBe(0);
    const parked: BrakeGear = { ...gear, kind: 'mechanical', parking: true };
    expect(leakedGear(parked, 1e6)).toBe(parked);
    expect(leakedGear({ ...gear, rigging: riggingFor('automatic-vacuum') }, 1)).toBeUndefined();
  });

  it.each([
    ['straight-air', 'lost'],
    ['simple-vacuum', 'lost'],
    ['automatic-air', 'applies'],
    ['automatic-vacuum', 'applies'],
    ['mechanical', 'as-set'],
    ['surge', 'released'],
    ['electric', 'unknown'],
  ] as const)('%s with its hose parted: %s', (kind, outcome) => {
    expect(whenSupplyIsLost({ kind } as BrakeGear).parted).toBe(outcome);
  });
});

describe('force that the stop reckons with', () => {
  const gear = brakedTrain('automatic-vacuum', 1).vehicles[1].brakes[0];
  const force = (changes: Partial<BrakeGear>): number =>
    gearForce({ ...gear, ...changes }, assumedValues, sea, sea)?.block.value ?? 0;

  it('takes the share that the chamber leaves', () => {
    expect(force({ forceShare: 0.8 })).toBeCloseTo(0.8 * force({}), 9);
  });

  it('takes a measured pull of the arm', () => {
    const hand = { leverRatio: 4, efficiency: exact(0.3), block: 'wood' as const, pull: exact(150) };
    expect(force({ rigging: undefined as never, hand })).toBeCloseTo(180, 9);
    const { pull: _, ...noPull } = hand;
    expect(
      gearForce({ ...gear, rigging: undefined as never, hand: noPull }, assumedValues, sea, sea),
    ).toBeUndefined();
  });

  it('a timed train has the times of its parts, and timing it again changes nothing', () => {
    const timed = timedTrain(loadedTrain('automatic-vacuum', 3), assumedValues, air);
    const brakes = timed.vehicles.slice(1).map((v) => v.brakes[0]);
    for (const b of brakes) {
      expect(b.buildUp?.source).toBe('filling of the brake from its parts');
      expect(b.forceShare).toBeGreaterThan(0.8);
      expect(b.forceShare).toBeLessThan(0.9);
    }
    expect(timedTrain(loadTrain(timed, []), assumedValues, air)).toBe(timed);
  });
});

describe('surge brakes in a train', () => {
  const surge = { leverRatio: 2, efficiency: exact(0.8), springForce: 20, block: 'wood' as const };
  const gear: BrakeGear = {
    id: 's',
    name: 's',
    kind: 'surge',
    on: ['a', 'b'],
    surge,
    workedBy: 'driver',
    parking: false,
  };
  const engineBrake: BrakeGear = {
    ...gear,
    id: 'e',
    kind: 'engine-only',
    surge: undefined as never,
    force: exact(600),
  };
  const train = (cars: number, engineGear: readonly BrakeGear[]) => {
    const made = brakedTrain('straight-air', cars);
    return loadTrain(
      { ...made, vehicles: made.vehicles.map((v, i) => ({ ...v, brakes: i === 0 ? engineGear : [gear] })) },
      [],
    );
  };

  it('balance of push and force, vehicle by vehicle', () => {
    const loaded = train(3, [engineBrake]);
    const forces = pushedBrakes(loaded, assumedValues, air).map((p) => p.force.value);
    const rolling = loaded.vehicles.map(
      ({ mass, vehicle }) => mass * 9.80665 * vehicle.resistance.rolling.value,
    );
    const a = (600 + [...forces, ...rolling].reduce((sum, f) => sum + f, 0)) / loaded.mass;
    const gain = 2 * 0.8 * assumedValues.blockFriction.wood[0].friction.value;
    let push = 0;
    for (const i of [3, 2, 1]) {
      push += loaded.vehicles[i].mass * a - forces[i - 1] - rolling[i];
      expect(forces[i - 1]).toBeCloseTo(Math.max(0, gain * (push - 20)), 2);
    }
  });

  it('a force measured with the coupler pushed in is the most that any push gives', () => {
    const forces = (force?: number): number[] => {
      const loaded = train(3, [engineBrake]);
      const stated = (g: BrakeGear): BrakeGear => (force === undefined ? g : { ...g, force: exact(force) });
      const vehicles = loaded.train.vehicles.map((v, i) =>
        i === 0 ? v : { ...v, brakes: v.brakes.map(stated) },
      );
      const changed = loadTrain({ ...loaded.train, vehicles }, []);
      return pushedBrakes(changed, assumedValues, air).map((p) => p.force.value);
    };
    const free = forces();
    expect(forces(5000)).toEqual(free);
    const least = Math.min(...free) / 2;
    for (const force of forces(least)) expect(force).toBe(least);
  });

  it('without its levers nobody knows what a push gives, whatever was measured', () => {
    const { surge: _, ...bare } = gear;
    const stated: BrakeGear = { ...bare, force: exact(300) };
    expect(gearForce(stated, assumedValues, air.pressure, air.seaLevel)).toBeUndefined();
    expect(gearForce({ ...stated, pushed: true }, assumedValues, air.pressure, air.seaLevel)).toBeDefined();
  });

  it('without a brake ahead there is no push', () => {
    expect(pushedBrakes(train(3, []), assumedValues, air)).toEqual([]);
  });

  it('the stop gets them as forces', () => {
    const timed = timedTrain(train(2, [engineBrake]), assumedValues, air);
    expect(timed.vehicles[1].brakes[0].force?.value).toBeGreaterThan(0);
  });
});
