/** A train with its people on: loads by the lever rule, who rides where, what is within reach, chains. All made up. */
import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../../engine/base/constants.ts';
import { between, exact } from '../../../engine/base/quantity.ts';
import { sameButChains, sameChains, unsaidAt } from '../../../engine/things/train/chains.ts';
import {
  carsAheadOfDriver,
  driverBehind,
  driverPlaces,
  driverReach,
  holderOf,
  placesOf,
} from '../../../engine/things/train/crew.ts';
import { groupLoads, loadTrain } from '../../../engine/things/train/loaded.ts';
import { resistanceAt, resistanceTerms } from '../../../engine/things/train/resistance.ts';
import type { Rider, Train } from '../../../engine/things/train/types.ts';
import { leastForRise, railRise, wheelHangs } from '../../../engine/things/vehicle/hump.ts';
import type { BrakeGear, Vehicle } from '../../../engine/things/vehicle/types.ts';
import { car, person, seatAt } from '../../support/balance.ts';
import { drawer } from '../../support/random-outings.ts';

const draw = drawer(2);
const plain = (changes: Partial<Vehicle> = {}): Vehicle => ({
  ...car(draw, { length: 2, tare: 100, trucks: [0.4, 1.6], seats: [seatAt('1', 0.7), seatAt('2', 1.8)] }),
  rotatingShare: exact(0.1),
  ...changes,
});
const [group] = plain().groups;
const at = (places: readonly number[], shares: readonly (number | undefined)[] = []): Vehicle =>
  plain({
    groups: places.map((p, i) => ({
      ...group,
      at: p,
      ...(shares[i] === undefined ? {} : { tareShare: shares[i] }),
    })),
  });
const nearly = (of: readonly number[]) => of.map((v) => expect.closeTo(v, 9));
const kg = (loads: readonly number[]): number[] => loads.map((n) => n / GRAVITY);

describe('loads on groups', () => {
  it('by the lever rule on two, overhanging or not; one carries all', () => {
    expect(kg(groupLoads(plain(), 100, 1, []))).toEqual(nearly([50, 50]));
    expect(kg(groupLoads(plain(), 100, 0.7, [{ mass: 60, at: 1.6 }]))).toEqual(nearly([75, 85]));
    expect(kg(groupLoads(plain(), 0, 0, [{ mass: 60, at: 1.9 }]))).toEqual(nearly([-15, 75]));
    expect(kg(groupLoads(at([0.9]), 100, 0.2, [{ mass: 60, at: 1.9 }]))).toEqual(nearly([160]));
  });

  it('three share the tare evenly, or as stated and the rest evenly; each further mass goes to the two around it', () => {
    const three = at([0.3, 1, 1.8]);
    expect(kg(groupLoads(three, 90, 1, []))).toEqual(nearly([30, 30, 30]));
    expect(kg(groupLoads(three, 0, 1, [{ mass: 70, at: 0.5 }]))).toEqual(nearly([50, 20, 0]));
    expect(kg(groupLoads(three, 0, 1, [{ mass: 80, at: 1.2 }]))).toEqual(nearly([0, 60, 20]));
    expect(kg(groupLoads(three, 0, 1, [{ mass: 80, at: 1 }]))).toEqual(nearly([0, 80, 0]));
    expect(kg(groupLoads(at([0.3, 1, 1.8], [0.5]), 100, 1, []))).toEqual(nearly([50, 25, 25]));
    expect(kg(groupLoads(at([0.4, 1.6], [0.7, 0.3]), 100, 1, []))).toEqual(nearly([70, 30]));
    expect(kg(groupLoads(at([0.4, 1.6], [undefined, 0.3]), 100, 1, []))).toEqual(nearly([70, 30]));
  });
});

describe('a train', () => {
  const rider = (id: string, vehicle: string, seat: string, more: Partial<Rider> = {}): Rider =>
    person(id, 60, { vehicle, seat, ...more });
  const train: Train = {
    name: 't',
    vehicles: [
      plain({ id: 'a', name: 'a' }),
      plain({ id: 'b', name: 'b', tare: between(90, 100, 120, 'stated') }),
    ],
    pipeBrokenAfter: [],
    chainsFastened: true,
  };
  it('adds who sits on it; who has no seat there counts nowhere', () => {
    const load = { name: 'coal', mass: between(10, 20, 40, 'stated'), at: 0.2, across: 0, height: 0.3 };
    const heavy = { ...train, vehicles: [train.vehicles[0], { ...train.vehicles[1], loads: [load] }] };
    const wide = { ...rider('2', 'b', '2'), mass: between(50, 60, 75, 'stated') };
    const loaded = loadTrain(heavy, [rider('1', 'b', '1'), wide, rider('3', 'b', 'none'), person('4', 60)]);
    const [a, b] = loaded.vehicles;
    expect([a.behind, b.behind, loaded.length, a.index, b.index]).toEqual([0, 2, 4, 0, 1]);
    expect([a.mass, b.mass, b.massLow, b.massHigh]).toEqual([
      100,
      240,
      90 + 10 + 60 + 50,
      120 + 40 + 60 + 75,
    ]);
    expect([loaded.mass, loaded.effectiveMass, b.effectiveMass]).toEqual(nearly([340, 360, 250]));
    expect(b.riders.map((r) => r.rider.id)).toEqual(['1', '2']);
    expect(b.centreAt).toBeCloseTo((100 * 1 + 20 * 0.2 + 60 * 0.7 + 60 * 1.8) / 240, 12);
    expect(kg(b.groupLoads).reduce((sum, n) => sum + n, 0)).toBeCloseTo(240, 9);
  });

  it('resists by weight, by speed, and by its square', () => {
    const resistance = {
      rolling: between(0.005, 0.01, 0.02, 'stated'),
      perSpeed: exact(1e-3),
      perSpeedSquared: 0.5,
    };
    const { vehicles } = loadTrain(
      { ...train, vehicles: train.vehicles.map((v) => ({ ...v, resistance })) },
      [],
    );
    const terms = resistanceTerms(vehicles, 0);
    expect(terms).toEqual({ a: expect.closeTo(2 * GRAVITY, 9), b: expect.closeTo(0.2 * GRAVITY, 9), c: 1 });
    expect([resistanceTerms(vehicles, -1).a, resistanceTerms(vehicles, 1).a]).toEqual(
      nearly([GRAVITY, 4 * GRAVITY]),
    );
    expect(resistanceAt(terms, 3)).toBeCloseTo(terms.a + 3 * terms.b + 9, 9);
  });

  it('chains: hung on either vehicle and nobody said whether they are fastened; trains alike but for them', () => {
    const link = { type: 'link' } as const;
    const chain = { ...link, chain: { count: 1, slack: 0.02 } };
    const pipeBrokenAfter: number[] = [];
    const of = (rear: Vehicle['rear'], front: Vehicle['front']): Train => ({
      name: 't',
      pipeBrokenAfter,
      vehicles: [
        { ...train.vehicles[0], front: link, rear },
        { ...train.vehicles[1], front, rear: link },
      ],
    });
    expect([of(chain, link), of(link, chain), of(link, link)].map((t) => unsaidAt(t, 0))).toEqual([
      true,
      true,
      false,
    ]);
    for (const chainsFastened of [true, false])
      expect(unsaidAt({ ...of(chain, link), chainsFastened }, 0)).toBe(false);
    expect(sameButChains(of(chain, link), of(link, link))).toBe(true);
    expect(sameButChains(of(chain, link), { ...of(link, link), chainsFastened: true })).toBe(true);
    expect(sameButChains(of(link, link), { ...of(link, link), name: 'other' })).toBe(false);
    expect(sameButChains(of(link, link), of({ ...link, height: 0.1 }, link))).toBe(false);
    expect(
      sameButChains(of(link, link), { ...of(link, link), vehicles: of(link, link).vehicles.slice(1) }),
    ).toBe(false);
    const heavier = of(link, link).vehicles.map((v, i) => (i === 1 ? { ...v, tare: exact(101) } : v));
    expect(sameButChains(of(link, link), { ...of(link, link), vehicles: heavier })).toBe(false);
    expect(sameChains(of(chain, link), of(chain, { ...link, height: 0.1 }))).toBe(true);
    expect(sameChains(of(chain, link), of(link, chain))).toBe(false);
    expect(sameChains(of(link, link), of(link, chain))).toBe(false);
    expect(sameChains(of(chain, link), { ...of(chain, link), chainsFastened: true })).toBe(false);
  });
});

describe('who rides where', () => {
  const of = (...roles: readonly Vehicle['role'][]): Train => ({
    name: 't',
    pipeBrokenAfter: [],
    vehicles: roles.map((role, i) => plain({ id: `${i}`, name: `${i}`, role })),
  });
  const duty = (d: Rider['duty'], vehicle: number, seat = '1'): Rider =>
    person(`${d}${vehicle}`, 80, { duty: d, vehicle: `${vehicle}`, seat });
  const withSeat = (train: Train, i: number, ...places: readonly number[]): Train => ({
    ...train,
    vehicles: train.vehicles.map((v, k) =>
      k === i
        ? { ...v, seats: [...v.seats, ...places.map((p) => ({ ...seatAt(`d${p}`, p), driver: true }))] }
        : v,
    ),
  });

  it('a driver who is named; else on the first driver’s seat, the first engine, the first vehicle', () => {
    const train = of('car', 'engine', 'car', 'engine');
    expect(driverPlaces({ train, riders: [duty('driver', 2), duty('guard', 0)] })).toEqual([2]);
    expect(driverPlaces({ train: withSeat(train, 2, 1), riders: [] })).toEqual([2]);
    expect(driverPlaces({ train: withSeat(train, 0, 1), riders: [] })).toEqual([0]);
    expect(driverPlaces({ train, riders: [] })).toEqual([1]);
    expect(driverPlaces({ train: of('car', 'car'), riders: [] })).toEqual([0]);
    expect(placesOf({ train, riders: [duty('guard', 3), duty('guard', 0)] }, 'guard')).toEqual([0, 3]);
  });

  it('eyes are where they sit, else on the driver’s seat farthest back, else at the end; cars ahead are counted', () => {
    const train = of('car', 'engine', 'car');
    const behind = (t: Train, riders: readonly Rider[]): number =>
      driverBehind({ train: t, riders }, loadTrain(t, riders));
    expect(behind(train, [duty('driver', 1)])).toBeCloseTo(2.7, 12);
    expect(behind(train, [duty('driver', 1, 'nowhere')])).toBeCloseTo(4, 12);
    expect(behind(withSeat(train, 1, 0.5, 1.2), [])).toBeCloseTo(3.2, 12);
    expect(behind(train, [duty('driver', 2), { ...duty('driver', 1, '2'), id: 'x' }])).toBeCloseTo(3.8, 12);
    expect(carsAheadOfDriver({ train, riders: [] })).toBe(1);
    expect(carsAheadOfDriver({ train, riders: [duty('driver', 2)] })).toBe(1);
    expect(carsAheadOfDriver({ train: of('car', 'guard', 'engine'), riders: [] })).toBe(2);
    expect(carsAheadOfDriver({ train: of('engine', 'car'), riders: [] })).toBe(0);
  });

  it('within reach are engine and tender next to the driver, and no second engine', () => {
    const reach = (train: Train, at: number): number[] =>
      [...driverReach({ train, riders: [duty('driver', at)] })].sort();
    expect(reach(of('engine', 'tender', 'car'), 0)).toEqual([0, 1]);
    expect(reach(of('engine', 'engine', 'car'), 0)).toEqual([0]);
    expect(reach(of('engine', 'tender', 'car'), 1)).toEqual([0, 1]);
    expect(reach(of('engine', 'tender', 'car'), 2)).toEqual([0, 1, 2]);
    expect(reach(of('engine', 'car', 'car'), 1)).toEqual([0, 1]);
    expect(reach(of('engine', 'car', 'car'), 2)).toEqual([2]);
    expect(reach(of('car', 'tender', 'car'), 0)).toEqual([0, 1]);
    expect(reach(of('tender', 'tender', 'car'), 0)).toEqual([0]);
    expect(reach(of('tender', 'engine'), 1)).toEqual([0, 1]);
  });

  it('a parking brake is put on by the driver within reach, by the guard on the guard’s own car, else by riders', () => {
    const gear = (workedBy: BrakeGear['workedBy']) => ({ workedBy }) as BrakeGear;
    const holder = holderOf({
      train: of('engine', 'tender', 'car', 'car'),
      riders: [duty('driver', 0), duty('guard', 3)],
    });
    expect([0, 1, 2, 3].map((i) => holder(gear('driver'), i))).toEqual([
      'driver',
      'driver',
      'riders',
      'guard',
    ]);
    expect([0, 1, 2, 3].map((i) => holder(gear('rider'), i))).toEqual([
      'driver',
      'riders',
      'riders',
      'guard',
    ]);
  });
});

it('over crests and sags: rail that comes up, a wheel that hangs, by hand', () => {
  expect([railRise(2, 0.5, 30), railRise(2, -0.5, 30)]).toEqual(nearly([(0.5 * 1.5) / 60, (0.5 * 2.5) / 60]));
  expect([leastForRise(2, 0.5, 0.01), leastForRise(2, -0.5, 0.01)]).toEqual(nearly([37.5, 62.5]));
  expect([leastForRise(2, 0.5, 0), leastForRise(2, 0.5, -1)]).toEqual([Infinity, Infinity]);
  expect([
    wheelHangs(0.003, 0.001),
    wheelHangs(-0.003, 0.001),
    wheelHangs(0.003, 0.004),
    wheelHangs(0, 0),
  ]).toEqual(nearly([0.004, 0.002, 0, 0]));
});
