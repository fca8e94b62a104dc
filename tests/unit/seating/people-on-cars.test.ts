/** Who may sit where, and how well a car is then loaded: by hand. All made up. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { arrange, type Slot } from '../../../engine/questions/seat/arrange.ts';
import { boundOfAll } from '../../../engine/questions/seat/bound.ts';
import {
  axlesBear,
  type Car,
  carMargin,
  carOf,
  mayRide,
  sitterOf,
} from '../../../engine/questions/seat/car.ts';
import { awayFromPractice, middleOf, offTrucks } from '../../../engine/questions/seat/custom.ts';
import { exchanged } from '../../../engine/questions/seat/exchange.ts';
import { reasonsFor } from '../../../engine/questions/seat/explain.ts';
import { slotsOfUnits } from '../../../engine/questions/seat/patterns.ts';
import type { SeatingProblem } from '../../../engine/questions/seat/types.ts';
import { unitsOf } from '../../../engine/questions/seat/units.ts';
import type { SeatedRider } from '../../../engine/things/train/loaded.ts';
import type { Rider } from '../../../engine/things/train/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { adultCentre, car, person, seatAt } from '../../support/balance.ts';
import { drawer } from '../../support/random-outings.ts';

const draw = drawer(5);
const BASE = 0.2;
const SIDE = 0.06;
/** Trucks 1.2 m apart, four seats: two over the trucks, two between. Nothing on springs. */
const SEATS = [seatAt('1', 0.4), seatAt('2', 0.8), seatAt('3', 1.2), seatAt('4', 1.6)];
const four = (changes: Partial<Vehicle> = {}): Vehicle => {
  const { suspension: _, ...rigid } = car(draw, { length: 2, tare: 100, trucks: [0.4, 1.6], seats: SEATS });
  return { ...rigid, ...changes };
};
const problem = (
  people: readonly Rider[] = [],
  rules: Partial<SeatingProblem['rules']> = {},
): SeatingProblem => ({
  cars: [],
  people,
  base: BASE,
  adultCentre,
  sideDemand: SIDE,
  rules: { heldChild: 'in-front', ...rules },
});
const seen = (vehicle: Vehicle, fixed: readonly SeatedRider[] = []): Car =>
  carOf({ vehicle, fixed }, problem()) as Car;
const adult = (mass: number) => sitterOf(person('a', mass), mass);
const HEAD = 0.38 + 0.25;

describe('how well a car is loaded', () => {
  it('by one rider off the middle: the lightest wheel of the lighter truck, by hand', () => {
    // 50 kg of tare on each truck; 80 kg at 0.8 m put two thirds on the front one.
    const [front, rear] = [50 + (80 * 2) / 3, 50 + 80 / 3];
    const moment = (100 * 0.24 + 80 * HEAD) * SIDE;
    const { wheel, sideways, trucks } = carMargin(seen(four()), [undefined, adult(80), undefined, undefined]);
    // Each truck takes half of the moment; per side 2·(moment/2)/base.
    expect(wheel).toBeCloseTo((rear - moment / BASE) / 90, 12);
    expect(sideways).toBeCloseTo(1 - (2 * moment) / BASE / 180, 12);
    expect(trucks).toBeCloseTo(rear / 90, 12);
    expect(front).toBeGreaterThan(rear);
  });

  it('who sits to one side counts against it, whichever it is; springs enlarge all of it', () => {
    const aside = (across: number, K?: number): number => {
      const seats = SEATS.map((s) => ({ ...s, across }));
      const suspension =
        K === undefined ? undefined : { equalised: true, rollStiffness: { ...adultCentre, low: K } };
      const bare = four({ seats });
      return carMargin(seen(suspension ? { ...bare, suspension } : bare), [
        adult(80),
        undefined,
        undefined,
        adult(80),
      ]).wheel;
    };
    const Z = 100 * 0.24 + 160 * HEAD;
    const share = (by: number): number => 1 - (2 * by * (160 * 0.05 + Z * SIDE)) / BASE / 260;
    expect(aside(0.05)).toBeCloseTo(share(1), 12);
    expect(aside(-0.05)).toBeCloseTo(share(1), 12);
    // One on each side is as good as both in the middle; on a car whose goods lie to one side the other side is better.
    const across = (...sides: [number, number]): number => {
      const seats = SEATS.map((seat, i) => ({ ...seat, across: i === 0 ? sides[0] : sides[1] }));
      return carMargin(seen(four({ seats })), [adult(80), undefined, undefined, adult(80)]).wheel;
    };
    const middle = 1 - (2 * Z * SIDE) / BASE / 260;
    expect(across(0.05, -0.05)).toBeCloseTo(middle, 12);
    const goods = [{ name: 'coal', mass: exact(20), at: 1, across: 0.1, height: 0.24 }];
    const laden = (side: number): number => {
      const seats = SEATS.map((seat) => ({ ...seat, across: side }));
      const sitters = [undefined, adult(80), undefined, undefined];
      return carMargin(seen(four({ seats, loads: goods })), sitters).sideways;
    };
    const moment = (side: number): number => Math.abs(20 * 0.1 + 80 * side) + (120 * 0.24 + 80 * HEAD) * SIDE;
    for (const side of [0.05, -0.05, -0.025])
      expect(laden(side)).toBeCloseTo(1 - (2 * moment(side)) / BASE / 200, 12);
    // Springs amplify by the car as it stands empty.
    const K = 2 * 9.80665 * 100 * 0.24;
    expect(aside(0.05, K)).toBeCloseTo(share(2), 12);
  });

  it('trucks of one and three axles share the moment as their axles, and the load is even at one to three', () => {
    const vehicle = four({
      groups: four().groups.map((g, i) => ({ ...g, axles: i === 0 ? 1 : 3, wheelBase: i })),
    });
    const Z = 100 * 0.24;
    const rear = (50 - (2 * 0.75 * Z * SIDE) / BASE) / 75;
    const front = (50 - (2 * 0.25 * Z * SIDE) / BASE) / 25;
    const empty = SEATS.map(() => undefined);
    expect(carMargin(seen(vehicle), empty).wheel).toBeCloseTo(Math.min(front, rear), 12);
    expect(carMargin(seen(vehicle), empty).trucks).toBeCloseTo(50 / 75, 12);
  });

  it('the seats are those that nobody holds, front first, then from the right', () => {
    const seats = [seatAt('b', 1, 0.4, 0.1), seatAt('c', 1, 0.4, -0.1), seatAt('a', 0.5), seatAt('d', 1.5)];
    const vehicle = four({ seats: [...seats, { ...seatAt('driver', 0.1), driver: true }] });
    const fixed = [{ rider: person('guard', 80), seat: seats[3] }];
    const { seats: free, mass, Z, groupMass } = seen(vehicle, fixed);
    expect(free.map((s) => s.id)).toEqual(['a', 'c', 'b']);
    expect(mass).toBe(180);
    expect(Z).toBeCloseTo(100 * 0.24 + 80 * HEAD, 12);
    // 1.1 m of 1.2 behind the front truck.
    expect(groupMass[1]).toBeCloseTo(50 + (80 * 1.1) / 1.2, 12);
  });

  it('a car whose centre nobody can bound is not seated; cars alike have one key', () => {
    const { centreHeight: _, ...bare } = four({ seats: [] });
    expect(carOf({ vehicle: bare, fixed: [] }, problem())).toBeUndefined();
    const { key } = seen(four());
    expect(seen(four({ id: 'other', name: 'other' })).key).toBe(key);
    expect(seen(four({ seats: SEATS.slice(1) })).key).not.toBe(key);
    expect(seen(four({ ratings: { riders: 3 } })).key).not.toBe(key);
    expect(seen(four(), [{ rider: person('g', 80), seat: SEATS[0] }]).key).not.toBe(
      seen(four(), [{ rider: person('g', 81), seat: SEATS[0] }]).key,
    );
  });
});

describe('who may ride', () => {
  const may = (
    count: number,
    vehicle: Partial<Vehicle>,
    rules: Partial<SeatingProblem['rules']> = {},
    mass = 80,
  ) =>
    mayRide(
      seen(four(vehicle)),
      Array.from({ length: count }, () => adult(mass)),
      problem([], rules),
    );

  it('no more than seats, than the host lets ride, than the vehicle is rated for: each at its bound and beyond', () => {
    expect([may(4, {}), may(5, {})]).toEqual([true, false]);
    expect([may(3, {}, { mostRidersPerCar: 3 }), may(4, {}, { mostRidersPerCar: 3 })]).toEqual([true, false]);
    expect([may(2, {}, { ridersPerAxle: 0.5 }), may(3, {}, { ridersPerAxle: 0.5 })]).toEqual([true, false]);
    // Of children none counts as an adult.
    const child = sitterOf(person('c', 30), 30);
    expect(mayRide(seen(four()), [child, child, child], problem([], { ridersPerAxle: 0.5 }))).toBe(true);
    expect([may(2, { ratings: { riders: 2 } }), may(3, { ratings: { riders: 2 } })]).toEqual([true, false]);
    expect([may(3, { ratings: { load: 240 } }), may(3, { ratings: { load: 239.9 } })]).toEqual([true, false]);
  });

  it('who is there already counts: all of them for the ratings, riders alone for the host', () => {
    const with1 = (
      duty: Rider['duty'],
      rules: Partial<SeatingProblem['rules']>,
      ratings: Vehicle['ratings'],
      n = 2,
    ) =>
      mayRide(
        seen(four({ ratings }), [{ rider: person('x', 80, { duty }), seat: SEATS[0] }]),
        Array.from({ length: n }, () => adult(80)),
        problem([], rules),
      );
    expect(with1('rider', { mostRidersPerCar: 2 }, {})).toBe(false);
    expect(with1('guard', { mostRidersPerCar: 2 }, {})).toBe(true);
    expect(with1('rider', { ridersPerAxle: 0.5 }, {})).toBe(false);
    expect(with1('guard', { ridersPerAxle: 0.5 }, {})).toBe(true);
    expect(with1('guard', {}, { riders: 2 })).toBe(false);
    expect(with1('guard', {}, { riders: 3 })).toBe(true);
    expect(with1('guard', {}, { load: 240 })).toBe(true);
    expect(with1('guard', {}, { load: 239 })).toBe(false);
    const coal = four({
      ratings: { load: 100 },
      loads: [{ name: 'coal', mass: { ...adultCentre, value: 21 }, at: 1, across: 0, height: 0.3 }],
    });
    expect(mayRide(seen(coal), [adult(80)], problem())).toBe(false);
    expect(mayRide(seen(coal), [adult(79)], problem())).toBe(true);
  });

  it('where the axles bear it', () => {
    // All 80 kg over the front truck of two axles: 130 kg, 65 on each.
    const on = (rating: number, seat: number): boolean =>
      axlesBear(
        seen(four({ ratings: { axleLoad: rating } })),
        SEATS.map((_, i) => (i === seat ? adult(80) : undefined)),
      );
    expect([on(65, 0), on(64.99, 0), on(64.99, 1), on(65, 3), on(64.99, 3)]).toEqual([
      true,
      false,
      true,
      true,
      false,
    ]);
  });
});

describe('ways to sit', () => {
  const slots = (people: readonly Rider[]): Slot[] => slotsOfUnits([{ riders: people, kind: '' }], 0);
  const ways = (people: readonly Rider[], vehicle = four()): number[][] => {
    const all: number[][] = [];
    const { complete } = arrange(seen(vehicle), slots(people), { heldChild: 'in-front' }, (a, margin) => {
      all.push([...a]);
      return margin;
    });
    expect(complete).toBe(true);
    return all;
  };

  it('of people who differ all are tried, of people alike each once', () => {
    expect(ways([person('a', 80), person('b', 70)])).toHaveLength(12);
    expect(ways([person('a', 80), person('b', 80)])).toHaveLength(6);
    expect(ways([person('a', 80), person('b', 80), person('c', 70)])).toHaveLength(12);
    expect(ways([])).toEqual([[-1, -1, -1, -1]]);
  });

  it('whoever holds a child is not like another of the same weight', () => {
    const child = person('c', 25, { heldBy: 'a' });
    const all = ways([person('a', 80), child, person('b', 80)]);
    // The child next ahead of its own adult: three places of the two, the other one on either seat left.
    expect(all).toHaveLength(6);
    for (const way of all) expect(way.indexOf(1)).toBe(way.indexOf(0) - 1);
  });

  it('nobody sits on a seat that does not bear them', () => {
    const seats = SEATS.map((s, i) => (i < 3 ? { ...s, most: 79.9 } : { ...s, most: 80 }));
    expect(ways([person('a', 80)], four({ seats }))).toEqual([[-1, -1, -1, 0]]);
    const { best, margin } = arrange(seen(four({ seats: seats.slice(0, 3) })), slots([person('a', 80)]), {
      heldChild: 'in-front',
    });
    expect([best, margin]).toEqual([undefined, -Infinity]);
  });
});

describe('people who belong together', () => {
  const ids = (people: readonly Rider[], seats = 4, grain = 0): string[] =>
    unitsOf(people, seats, grain).units.map((u) => u.riders.map((r) => r.id).join(' '));
  const kinds = (people: readonly Rider[], grain = 0): string[] =>
    unitsOf(people, 4, grain).units.map((u) => u.kind);

  it('are one unit: by party, by who holds whom, and by both in a chain', () => {
    const party = [person('a', 80, { group: 'g' }), person('b', 70), person('c', 60, { group: 'g' })];
    expect(ids(party).sort()).toEqual(['b', 'c a'].sort());
    const held = [...party, person('d', 20, { heldBy: 'c' }), person('e', 20, { heldBy: 'nobody' })];
    expect(
      ids(held)
        .map((u) => u.split(' ').sort().join(' '))
        .sort(),
    ).toEqual(['a c d', 'b', 'e']);
  });

  it('are parted where no car takes them all, holders never from whom they hold, and that is said', () => {
    const school = [1, 2, 3, 4, 5].map((i) => person(`p${i}`, 60 + i, { group: 'school' }));
    const child = { ...person('k', 20, { heldBy: 'p5' }) };
    const { units, split } = unitsOf([...school, child], 3, 0);
    expect(split).toEqual(['school']);
    expect(units.map((u) => u.riders.length)).toEqual([3, 3]);
    expect(units.find((u) => u.riders.includes(child))?.riders.map((r) => r.id)).toContain('p5');
    expect(unitsOf(school, 5, 0).split).toEqual([]);
    const alone = [person('h', 80), ...[1, 2].map((i) => person(`k${i}`, 20, { heldBy: 'h' }))];
    expect(unitsOf(alone, 2, 0).split).toEqual([alone[0].name]);
  });

  it('are of one kind where they weigh the same, rounded up to the grain; grown or not, held or not', () => {
    expect(new Set(kinds([person('a', 80), person('b', 80), person('c', 79)]))).toEqual(
      new Set(['80/adult', '79/adult']),
    );
    expect(kinds([person('a', 76), person('b', 80), person('c', 81)], 5)).toEqual([
      '80/adult',
      '80/adult',
      '85/adult',
    ]);
    const pair = (holder: string, child: string) => [
      person(holder, 80),
      person(child, 25, { heldBy: holder }),
    ];
    expect(kinds([...pair('a', 'b'), ...pair('c', 'd')])).toEqual(
      Array(2).fill('25/child<80/adult+80/adult'),
    );
  });
});

describe('what practice prefers', () => {
  const on = (...of: readonly [Rider, number][]) => of.map(([rider, i]) => ({ rider, seat: SEATS[i] }));
  const rules = { heldChild: 'in-front' } as const;

  it('the middle lies between the outer trucks, of a single group in the middle of the vehicle', () => {
    expect(middleOf(four())).toBe(1);
    const three = four({ groups: [0.4, 0.5, 1.4].map((at) => ({ ...four().groups[0], at })) });
    expect(middleOf(three)).toBeCloseTo(0.9, 12);
    expect(middleOf(four({ length: 3, groups: [four().groups[0]] }))).toBe(1.5);
  });

  it('counts how far a rider alone sits from it, a pair from the trucks, by the length of the vehicle', () => {
    const [a, b] = [person('a', 80), person('b', 80)];
    expect(awayFromPractice(four(), on([a, 0]), rules)).toBeCloseTo(0.6 / 2, 12);
    expect(offTrucks(four(), on([a, 2], [b, 0]))).toBeCloseTo(0.4, 12);
    expect(awayFromPractice(four(), on([a, 2], [b, 0]), rules)).toBeCloseTo(0.2, 12);
    expect(awayFromPractice(four(), on([a, 0], [b, 3]), rules)).toBe(0);
    // A child beside it is no pair; on one truck alone there is nothing to sit over.
    expect(awayFromPractice(four(), on([a, 1], [person('c', 30), 2]), rules)).toBe(0);
    expect(awayFromPractice(four({ groups: [four().groups[0]] }), on([a, 1], [b, 2]), rules)).toBe(0);
  });

  it('counts each child on the wrong side of every adult who looks after it', () => {
    const adults = [person('a', 80, { group: 'g' }), person('b', 80, { group: 'g' }), person('x', 80)];
    const child = person('c', 30, { group: 'g' });
    const away = (
      seats: readonly number[],
      c: Rider,
      heldChild: 'in-front' | 'behind' = 'in-front',
    ): number =>
      awayFromPractice(four(), on([adults[0], seats[0]], [adults[1], seats[1]], [c, seats[2]]), {
        heldChild,
      });
    expect(away([1, 3, 2], child)).toBe(0);
    expect(away([0, 1, 2], child)).toBe(1);
    expect(away([0, 1, 2], child, 'behind')).toBe(0);
    const held = person('c', 30, { group: 'g', heldBy: 'a' });
    expect(away([1, 3, 2], held)).toBe(1);
    // Another party's child, a grown child of the party: nobody looks after them.
    expect(away([0, 1, 2], person('c', 30, { group: 'h' }))).toBe(0);
    expect(away([0, 1, 2], person('c', 30))).toBe(0);
    expect(away([0, 1, 2], person('c', 60, { group: 'g' }))).toBe(0);
  });
});

describe('why a car is seated so', () => {
  const even = { wheel: 0.5, sideways: 0.5, trucks: 1 };
  const reasons = (people: readonly (Rider | undefined)[], margin = even, vehicle = four()) =>
    reasonsFor(seen(vehicle), people, margin);
  const [a, b, c] = [person('a', 80), person('b', 80), person('c', 80)];

  it('is said in the trade’s words', () => {
    const none = undefined;
    expect(reasons([none, none, none, none])).toEqual(['left-empty']);
    expect(reasons([none, a, none, none])).toEqual(['single-in-middle']);
    expect(reasons([a, none, none, none])).toEqual([]);
    expect(reasons([a, none, none, b])).toEqual(['pair-over-trucks']);
    expect(reasons([none, a, b, none])).toEqual(['pair-about-middle']);
    expect(reasons([a, b, none, none])).toEqual([]);
    expect(reasons([a, none, none, b], even, four({ groups: [{ ...four().groups[0], at: 1 }] }))).toEqual([]);
    expect(reasons([a, b, none, c])).toEqual(['even-over-trucks']);
    expect(reasons([a, b, none, c], { ...even, trucks: 0.9 })).toEqual(['even-over-trucks']);
    expect(reasons([a, b, none, c], { ...even, trucks: 0.89 })).toEqual([]);
    expect(reasons([person('k', 25, { heldBy: 'a' }), a, none, none])).toEqual(['child-ahead-of-adult']);
  });
});

it('no seating beats all cars taken together, everyone on the lowest seat', () => {
  const low = four({ seats: [seatAt('1', 0.4, 0.5), seatAt('2', 0.8, 0.3)] });
  const cars = [seen(four()), seen(low)];
  const Z = 2 * 100 * 0.24 + 80 * (0.3 + 0.25) + 30 * (0.3 + 0.25 * 0.73);
  const people = [person('a', 80), person('c', 30)];
  expect(boundOfAll(problem(people), cars)).toBeCloseTo(1 - (2 * SIDE * Z) / BASE / 310, 12);
});

describe('exchanging between the worst car and the others', () => {
  const units = (...masses: number[]) =>
    unitsOf(
      masses.map((m, i) => person(`${m}-${i}`, m)),
      4,
      0,
    ).units;
  const masses = (given: ReturnType<typeof exchanged>): number[][] =>
    given.map((of) => of.flatMap((u) => u.riders.map((r) => r.mass.value)).sort((a, b) => a - b));

  it('swaps until the worst gets no better, and gives what an emptier car takes', () => {
    // A lone rider cannot sit in the middle: the car with one stands worst, with its fellow well.
    const cars = [seen(four()), seen(four())];
    const before = [units(100, 101, 102), units(50)];
    const after = exchanged(problem(), cars, before);
    const worst = (given: readonly ReturnType<typeof units>[]): number =>
      Math.min(
        ...given.map((of, i) => arrange(cars[i], slotsOfUnits(of, 0), { heldChild: 'in-front' }).margin),
      );
    expect(worst(after as ReturnType<typeof units>[])).toBeGreaterThan(worst(before) + 0.01);
    expect(
      masses(after)
        .flat()
        .sort((x, y) => x - y),
    ).toEqual([50, 100, 101, 102]);
  });

  it('leaves alone what is as good as can be, and what the rules forbid', () => {
    const cars = [seen(four()), seen(four())];
    const even = [units(80, 80), units(80, 80)];
    expect(exchanged(problem(), cars, even)).toBe(even);
    const full = [seen(four({ ratings: { riders: 3 } })), seen(four({ ratings: { riders: 1 } }))];
    const after = exchanged(problem(), full, [units(100, 101, 102), units(50)]);
    expect(masses(after).map((m) => m.length)).toEqual([3, 1]);
  });
});
