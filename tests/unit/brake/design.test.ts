/**
 * A brake that is asked for: what it must pull, by energy; what a cylinder and lever give, by area; and what stands against
 * it. On a made-up road of which all is known: an engine of 400 kg without a brake and two cars of 100 kg, from 3 m/s.
 */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import {
  type DesignRequest,
  designBrakes,
  leastStop,
  usualBores,
} from '../../../engine/questions/brakes/design.ts';
import { G, laid } from '../../support/on-a-fall.ts';

const MU = 0.5;
const ROLLS = 0.005;
/** Blocks that grip alike at every speed. */
const FRICTION = 0.25;
const bare: Outing = (() => {
  const outing = laid({ adhesion: exact(MU), rolling: exact(ROLLS) });
  const { assumed, train } = outing;
  return {
    ...outing,
    conditions: { ...outing.conditions, railState: 'dry' as const },
    assumed: {
      ...assumed,
      // No oily spot, of which one stop in a hundred meets the worst.
      badSpot: { ...assumed.badSpot, chance: { ...assumed.badSpot.chance, dry: exact(0) } },
      blockFriction: {
        ...assumed.blockFriction,
        composition: [{ speed: 0, friction: exact(FRICTION) }] as never,
      },
    },
    train: { ...train, vehicles: train.vehicles.map((v) => ({ ...v, brakes: [], rotatingShare: exact(0) })) },
  };
})();
const request: DesignRequest = {
  distance: 9,
  speed: 3,
  grade: 0,
  pressure: exact(300_000),
  efficiency: exact(0.8),
  block: 'composition',
  springForce: 50,
  cylindersPerCar: 2,
  deadTime: exact(1e-3),
  buildUp: exact(2e-3),
  reaction: exact(0),
  withEngine: true,
  everyCar: true,
  bores: [0.032],
};
const design = (more: Partial<DesignRequest> = {}, outing = bare) =>
  designBrakes(openOuting(outing), { ...request, ...more });
/** ½·M·v² and the fall, less what rolling takes, over the way. */
const byEnergy = (distance: number, fall: number): number =>
  (600 * 3 * 3) / 2 / distance + 600 * G * (Math.sin(Math.atan(fall)) - ROLLS);
/** Newtons for each unit of lever ratio: two cylinders of 32 mm against their springs. */
const perLever = (bore = 0.032): number =>
  2 * (((Math.PI / 4) * bore * bore * 300_000 - 50) * 0.8 * FRICTION);
const forces = (more: Partial<DesignRequest> = {}) => design(more).needed.map((n) => n.force ?? Number.NaN);

describe('what is needed', () => {
  it('stops the train in the distance: by energy, on both cars', () => {
    expect(forces()).toHaveLength(1);
    expect(forces()[0] / (byEnergy(9, 0) / 2)).toBeCloseTo(1, 1.5);
    expect(forces({ grade: -0.02 })[0] / (byEnergy(9, 0.02) / 2)).toBeCloseTo(1, 1.5);
    expect(forces({ distance: 18 })[0] / (byEnergy(18, 0) / 2)).toBeCloseTo(1, 1.5);
  });
  it('is asked of the first car alone, and of both, where not every car need have it', () => {
    const both = design({ everyCar: false, distance: 15 }).needed;
    expect(both.map((n) => n.brakedCars)).toEqual([1, 2]);
    expect((both[0].force ?? 0) / (both[1].force ?? 1)).toBeCloseTo(2, 1);
    expect(design({ distance: 15 }).needed.map((n) => n.brakedCars)).toEqual([2]);
  });
  it('is none that the rail does not bear: half of what the two cars weigh stops 600 kg in 2.7 m at best', () => {
    const best = (600 * 9) / 2 / (200 * G * MU);
    expect(design({ distance: best })).toMatchObject({ needed: [{ force: null }], designs: [] });
    const least = leastStop(openOuting(bare), request);
    expect(least).toBeGreaterThan(best);
    expect(least).toBeLessThan(1.3 * best);
    expect(design({ distance: least * 1.01 }).needed[0].force).not.toBeNull();
    expect(design({ distance: least * 0.98 }).needed[0].force).toBeNull();
  });
  it('is less where the engine brakes too, and only where it may count', () => {
    const [engine, ...cars] = laid({ adhesion: exact(MU), rolling: exact(ROLLS) }).train.vehicles;
    const screwed = engine.brakes.map((b) => ({
      ...b,
      parking: false,
      force: exact(100),
      deadTime: exact(1e-3),
      buildUp: exact(2e-3),
    }));
    const vehicles = [
      { ...bare.train.vehicles[0], brakes: screwed },
      ...cars.map((v) => ({ ...v, brakes: [] })),
    ];
    const outing = { ...bare, train: { ...bare.train, vehicles } };
    const of = (withEngine: boolean) => design({ withEngine }, outing).needed[0].force ?? Number.NaN;
    expect(of(false) - of(true)).toBeGreaterThan(45);
    expect(of(false) - of(true)).toBeLessThan(55);
  });
  it('is of a stop: no distance and no speed are none', () => {
    expect(() => design({ distance: 0 })).toThrow(RangeError);
    expect(() => design({ speed: 0 })).toThrow(RangeError);
  });
  it('of a train without cars nobody knows', () => {
    const alone = { ...bare, train: { ...bare.train, vehicles: bare.train.vehicles.slice(0, 1) } };
    expect(design({}, alone)).toMatchObject({ needed: [], designs: [] });
    expect(leastStop(openOuting(alone), request)).toBe(Infinity);
  });
});

describe('a cylinder and its lever', () => {
  const [only] = design().designs;
  it('give what the air gives less the spring, by the lever, in quarters upward', () => {
    expect(only.leverRatio * 4).toBe(Math.round(only.leverRatio * 4));
    expect(only.force).toBeCloseTo(perLever() * only.leverRatio, 6);
    expect(only.force).toBeGreaterThanOrEqual(forces()[0] * 0.999);
    // A quarter less would not do.
    expect(perLever() * (only.leverRatio - 0.25)).toBeLessThan(forces()[0]);
    expect(only).toMatchObject({ brakedCars: 2, bore: 0.032, feasible: true, limits: [] });
    expect(only.margin).toBeCloseTo(1 - only.cautiousStop / 9, 12);
    expect(only.margin).toBeGreaterThanOrEqual(0);
  });
  it('are never shorter than levers are made', () => {
    const { 'lever-least': least } = bare.assumed.practice;
    expect(design({ bores: [0.16] }).designs[0].leverRatio).toBe(least.value);
  });
  it('are told as a share of the weight of the lightest car, empty and as it runs', () => {
    expect(only.emptyRatio).toBeCloseTo(only.force / (100 * G), 9);
    expect(only.loadedRatio).toBeCloseTo(only.force / (100 * G), 9);
    const [engine, one, two] = bare.train.vehicles;
    const laden = {
      ...one,
      loads: [{ name: 'sand', mass: exact(50), at: one.length / 2, across: 0, height: 0.2 }],
    };
    const [heavy] = design(
      {},
      { ...bare, train: { ...bare.train, vehicles: [engine, laden, laden] } },
    ).designs;
    expect(heavy.loadedRatio).toBeCloseTo(heavy.force / (150 * G), 9);
    expect(heavy.emptyRatio).toBeCloseTo(heavy.force / (100 * G), 9);
    const [mixed] = design({}, { ...bare, train: { ...bare.train, vehicles: [engine, laden, two] } }).designs;
    expect(mixed.loadedRatio).toBeCloseTo(mixed.force / (100 * G), 9);
  });
  it('out of reach where the lever would be longer than they are made', () => {
    const [small] = design({ bores: [0.016] }).designs;
    expect(small).toMatchObject({ limits: ['lever-out-of-reach'], feasible: false, force: 0 });
    expect(forces()[0] / perLever(0.016)).toBeGreaterThan(bare.assumed.practice['lever-most'].value);
  });
  it('do nothing where the air does not overcome the spring', () => {
    const push = (Math.PI / 4) * 0.032 ** 2 * 300_000;
    expect(design({ springForce: push * 1.001 }).designs[0]).toMatchObject({
      limits: ['spring-not-overcome'],
      feasible: false,
      leverRatio: Infinity,
    });
    expect(design({ springForce: push * 0.98 }).designs[0].limits).toEqual(['lever-out-of-reach']);
  });
  it('slide an empty car sooner than a full one: told, and feasible', () => {
    // Cars of 100 kg with 300 kg on them: what they need slides them when they are empty.
    const [engine, ...cars] = bare.train.vehicles;
    const load = (mass: number) => [{ name: 'sand', mass: exact(mass), at: 0, across: 0, height: 0.2 }];
    const full = cars.map((v) => ({ ...v, loads: load(300).map((l) => ({ ...l, at: v.length / 2 })) }));
    const vehicles = [engine, ...full];
    const [one] = design({ distance: 4 }, { ...bare, train: { ...bare.train, vehicles } }).designs;
    expect(one.emptyRatio).toBeGreaterThan(MU);
    expect(one.loadedRatio).toBeLessThan(MU);
    expect(one).toMatchObject({ limits: ['slides-empty'], feasible: true });
  });
});

it('bores are looked at one after the other, growing, and the usual ones are those sold', () => {
  expect(usualBores.map((b) => Math.round(1000 * b))).toEqual([
    16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160,
  ]);
  expect(design({ bores: [0.04, 0.05] }).designs.map((d) => d.bore)).toEqual([0.04, 0.05]);
});
