/** The seating against trying everything, and the rules it must keep. */
import { beforeAll, describe, expect, it } from 'vitest';
import { loadSolver } from '../../../desk/seating.ts';
import { mayHold } from '../../../engine/questions/seat/arrange.ts';
import {
  axlesBear,
  type Car,
  carMargin,
  carOf,
  mayRide,
  sitterOf,
} from '../../../engine/questions/seat/car.ts';
import { seatPeople } from '../../../engine/questions/seat/seat.ts';
import type { Seating, SeatingProblem, Solve } from '../../../engine/questions/seat/types.ts';
import type { Rider } from '../../../engine/things/train/types.ts';
import { adultCentre, car, person, seatAt } from '../../support/balance.ts';
import { type Draw, drawer } from '../../support/random-outings.ts';

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

const problem = (
  people: readonly Rider[],
  vehicles: readonly ReturnType<typeof car>[],
  rules: Partial<SeatingProblem['rules']> = {},
): SeatingProblem => ({
  cars: vehicles.map((vehicle) => ({ vehicle, fixed: [] })),
  people,
  base: 0.2,
  adultCentre,
  sideDemand: 0.06,
  rules: { heldChild: 'in-front', ...rules },
});

/** Every way to put every person on every free seat of every car. */
function bestByTrying(p: SeatingProblem): number | undefined {
  const cars = p.cars.map((c) => carOf(c, p) as Car);
  const seats = cars.flatMap((c, i) => c.seats.map((_, s) => ({ car: i, seat: s })));
  const on: (Rider | undefined)[] = seats.map(() => undefined);
  let best: number | undefined;
  const put = (k: number): void => {
    if (k === p.people.length) {
      const worst = worstOf(p, cars, seats, on);
      if (worst !== undefined && (best === undefined || worst > best)) best = worst;
      return;
    }
    for (let i = 0; i < seats.length; i++) {
      if (on[i]) continue;
      on[i] = p.people[k];
      put(k + 1);
      on[i] = undefined;
    }
  };
  put(0);
  return best;
}

function worstOf(
  p: SeatingProblem,
  cars: readonly Car[],
  seats: readonly { car: number; seat: number }[],
  on: readonly (Rider | undefined)[],
): number | undefined {
  const at = (id: string | undefined): number => on.findIndex((r) => r?.id === id);
  for (const r of p.people) {
    const here = seats[at(r.id)];
    const mates = p.people.filter((o) => o.group !== undefined && o.group === r.group);
    if (mates.some((m) => seats[at(m.id)].car !== here.car)) return undefined;
    if (r.heldBy === undefined) continue;
    const adult = seats[at(r.heldBy)];
    const all = cars[here.car].seats;
    if (adult.car !== here.car || !mayHold(all, all[here.seat], all[adult.seat], p.rules.heldChild)) {
      return undefined;
    }
  }
  let worst = Infinity;
  for (let c = 0; c < cars.length; c++) {
    const sitters = seats.flatMap(({ car: i }, k) => {
      const r = on[k];
      return i === c ? [r ? sitterOf(r, r.mass.value) : undefined] : [];
    });
    const sat = sitters.filter((s) => s !== undefined);
    if (!mayRide(cars[c], sat, p) || !axlesBear(cars[c], sitters)) return undefined;
    if (sitters.some((s, i) => s && s.mass > (cars[c].seats[i].most ?? Infinity))) return undefined;
    worst = Math.min(worst, carMargin(cars[c], sitters).wheel);
  }
  return worst;
}

function randomProblem(draw: Draw): SeatingProblem {
  const two = draw(0, 1) < 0.4;
  const rows = two ? [0.3, 0.7] : [0.2, 0.5, 0.8];
  const vehicles = Array.from({ length: Math.floor(draw(1, 4)) }, (_, i) =>
    car(draw, {
      id: `c${i}`,
      tare: draw(0, 1) < 0.5 ? 110 : draw(60, 160),
      seats: two
        ? rows.flatMap((x, k) => [
            seatAt(`${k}l`, 2.2 * x, 0.36, 0.09),
            seatAt(`${k}r`, 2.2 * x, 0.36, -0.09),
          ])
        : rows.map((x, k) => seatAt(`${k}`, 2.2 * x, 0.38 + 0.02 * k)),
    }),
  );
  const seats = vehicles.length * (two ? 4 : 3);
  const count = Math.min(seats, Math.floor(draw(1, seats > 6 ? 5 : 6)));
  const people = Array.from({ length: count }, (_, i) => {
    const kinds = [88, 77, 50, 26];
    return person(`p${i}`, kinds[Math.floor(draw(0, 4))], draw(0, 1) < 0.4 ? { group: `g${i >> 1}` } : {});
  });
  const held = people.findIndex((p) => p.ageGroup === 'child');
  const adult = people.find((p) => p.ageGroup === 'adult');
  if (held >= 0 && adult && draw(0, 1) < 0.6) people[held] = { ...people[held], heldBy: adult.id };
  return problem(people, vehicles, draw(0, 1) < 0.3 ? { ridersPerAxle: 0.5 } : {});
}

describe('seating against trying everything', () => {
  it('reaches the best worst margin, or agrees that there is none, in 150 small cases', () => {
    const draw = drawer(20261125);
    let none = 0;
    let seated = 0;
    for (let n = 0; n < 150; n++) {
      const p = randomProblem(draw);
      const tried = bestByTrying(p);
      const found = seatPeople(p, solve);
      if (tried === undefined) {
        none++;
        expect(found.ok, `case ${n}`).toBe(false);
      } else {
        seated++;
        expect(found.ok, `case ${n}`).toBe(true);
        expect((found as Seating).worst, `case ${n}`).toBeCloseTo(tried, 9);
        expect((found as Seating).proven, `case ${n}`).toBe(true);
      }
    }
    expect(seated).toBeGreaterThan(100);
    expect(none).toBeGreaterThan(2);
  });
});

const draw = drawer(1);
const seat = (p: SeatingProblem): Seating => {
  const found = seatPeople(p, solve);
  if (!found.ok) throw new Error(found.why);
  return found;
};

describe('seating in the trade’s terms', () => {
  it('puts a single rider in the middle of a car with three seats', () => {
    const seats = [0.2, 0.5, 0.8].map((x, i) => seatAt(`${i}`, 2.2 * x));
    const found = seat(problem([person('a', 80)], [car(draw, { seats })]));
    expect(found.places[0].seat).toBe('1');
    expect(found.cars[0].reasons).toContain('single-in-middle');
  });

  it('puts two equal adults over the trucks, alike', () => {
    const found = seat(problem([person('a', 80), person('b', 80)], [car(draw)]));
    expect(found.cars[0].reasons).toContain('pair-over-trucks');
    expect(found.cars[0].margin.trucks).toBeCloseTo(1, 9);
  });

  it('among equal seatings takes the seats of practice: two adults over the trucks, not on the inner seats', () => {
    const two = [person('a', 80), person('b', 80)];
    const seats = [0.1, 0.2, 0.4, 0.6, 0.8, 0.9].map((x, i) => seatAt(`${i}`, 2 * x));
    const six = seat(problem(two, [car(draw, { length: 2, trucks: [0.4, 1.6], seats })]));
    expect(six.places.map((p) => p.seat)).toEqual(['1', '4']);
    expect(six.cars[0].reasons).toContain('pair-over-trucks');
  });

  it('and a child in front of the adult of its party', () => {
    const people = [person('adult', 80, { group: 'g' }), person('child', 25, { group: 'g' })];
    const index = (s: Seating, id: string): number => Number(s.places.find((p) => p.rider === id)?.seat);
    for (const order of [people, [...people].reverse()]) {
      const ahead = seat(problem(order, [car(draw)]));
      expect(index(ahead, 'child')).toBeLessThan(index(ahead, 'adult'));
      const behind = seat(problem(order, [car(draw)], { heldChild: 'behind' }));
      expect(index(behind, 'child')).toBeGreaterThan(index(behind, 'adult'));
    }
  });

  it('says of two adults on inner seats what is done', () => {
    const inner = [
      person('a', 80, { vehicle: 'car', seat: '2' }),
      person('b', 80, { vehicle: 'car', seat: '3' }),
    ];
    const found = seat(problem(inner, [car(draw)]));
    expect(found.moved).toEqual([]);
    expect(found.cars[0].reasons).toContain('pair-about-middle');
    expect(found.cars[0].reasons).not.toContain('pair-over-trucks');
  });

  it('puts a held child directly in front of its adult, or behind where the rule says so', () => {
    const people = [person('adult', 80), person('child', 25, { heldBy: 'adult' })];
    const index = (s: Seating, id: string): number => Number(s.places.find((p) => p.rider === id)?.seat);
    const ahead = seat(problem(people, [car(draw)]));
    expect(index(ahead, 'adult') - index(ahead, 'child')).toBe(1);
    expect(ahead.cars[0].reasons).toContain('child-ahead-of-adult');
    const behind = seat(problem(people, [car(draw)], { heldChild: 'behind' }));
    expect(index(behind, 'child') - index(behind, 'adult')).toBe(1);
  });

  it('moves nobody when nothing is better, and few when one more turns up', () => {
    const people = Array.from({ length: 10 }, (_, i) => person(`p${i}`, [88, 77, 50, 26, 77][i % 5]));
    const cars = ['a', 'b', 'c'].map((id) => car(draw, { id }));
    const sit = (s: Seating, all: readonly Rider[]): Rider[] =>
      all.map((r) => {
        const place = s.places.find((p) => p.rider === r.id);
        return place ? { ...r, vehicle: place.vehicle, seat: place.seat } : r;
      });
    const first = seat(problem(people, cars));
    const again = seat(problem(sit(first, people), cars));
    expect(again.moved).toEqual([]);
    const more = seat(problem([...sit(first, people), person('late', 77)], cars));
    expect(more.places).toHaveLength(11);
    // Ten people sat; a fresh seating of eleven would move most of them.
    expect(more.moved.length).toBeLessThanOrEqual(5);
  });

  it('splits a group larger than a car and says so; keeps the others whole', () => {
    const people = Array.from({ length: 6 }, (_, i) => person(`p${i}`, 70, { group: 'school' }));
    const found = seat(problem(people, [car(draw, { id: 'a' }), car(draw, { id: 'b' })]));
    expect(found.split).toEqual(['school']);
    expect(found.places).toHaveLength(6);
  });

  it('keeps ratings: what cannot be seated is said, not squeezed in', () => {
    const light = { ...car(draw), ratings: { load: 150 } };
    expect(seatPeople(problem([person('a', 80), person('b', 80)], [light]), solve)).toEqual({
      ok: false,
      why: 'rules',
    });
    expect(
      seatPeople(
        problem(
          [1, 2, 3, 4, 5].map((i) => person(`${i}`, 60)),
          [car(draw)],
        ),
        solve,
      ),
    ).toEqual({
      ok: false,
      why: 'too-few-seats',
    });
  });

  it('with thirty different weights on eight cars stays close to what no seating can beat', () => {
    const people = Array.from({ length: 30 }, (_, i) => person(`p${i}`, 25 + ((i * 37) % 30) * 2.7));
    const cars = Array.from({ length: 8 }, (_, i) => car(draw, { id: `c${i}` }));
    const found = seat(problem(people, cars));
    expect(found.places).toHaveLength(30);
    expect(found.bound - found.worst).toBeLessThan(0.02);
    expect(found.bound).toBeGreaterThanOrEqual(found.worst);
  });
});
