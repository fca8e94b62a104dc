/** Who changes seat, and what is proven, where somebody sits already. All made up. */
import { beforeAll, expect, it } from 'vitest';
import { loadSolver } from '../../../desk/seating.ts';
import { seatPeople } from '../../../engine/questions/seat/seat.ts';
import type { Solve } from '../../../engine/questions/seat/types.ts';
import { adultCentre, car, person, seatAt } from '../../support/balance.ts';
import { drawer } from '../../support/random-outings.ts';

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});
const draw = drawer(9);
const problem = (vehicles: ReturnType<typeof car>[], people: ReturnType<typeof person>[]) => ({
  cars: vehicles.map((vehicle) => ({ vehicle, fixed: [] })),
  people,
  base: 0.2,
  adultCentre,
  sideDemand: 0.06,
  rules: { heldChild: 'in-front' as const },
});

it('two who must change places have both moved, though each seat is taken as before', () => {
  const seats = [{ ...seatAt('1', 0.5), most: 70 }, seatAt('2', 1.7)];
  const people = [
    person('heavy', 80, { vehicle: 'car', seat: '1' }),
    person('light', 60, { vehicle: 'car', seat: '2' }),
    person('new', 50),
  ];
  const found = seatPeople(problem([car(draw, { seats }), car(draw, { id: 'b' })], people), solve);
  if (!found.ok) throw new Error(found.why);
  const at = (id: string) => found.places.find((p) => p.rider === id);
  expect(at('heavy')?.seat === '1' && at('heavy')?.vehicle === 'car').toBe(false);
  expect(found.moved).toContain('heavy');
  // Whoever had no seat has not changed it.
  expect(found.moved).not.toContain('new');
  const two = seatPeople(problem([car(draw, { seats })], people.slice(0, 2)), solve);
  expect(two).toMatchObject({ ok: true, moved: ['heavy', 'light'], proven: true });
});

it('a solver that gives up, no seats, no way: each is said', () => {
  const cars = [car(draw)];
  const people = [person('a', 80)];
  const other: Solve = () => ({ status: 'other', values: new Map() });
  expect(seatPeople(problem(cars, people), other)).toEqual({ ok: false, why: 'solver' });
  const none: Solve = () => ({ status: 'infeasible', values: new Map() });
  expect(seatPeople(problem(cars, people), none)).toEqual({ ok: false, why: 'rules' });
  expect(seatPeople(problem([], people), solve)).toEqual({ ok: false, why: 'too-few-seats' });
  const full = [1, 2, 3, 4, 5].map((i) => person(`${i}`, 60));
  expect(seatPeople(problem(cars, full), solve)).toEqual({ ok: false, why: 'too-few-seats' });
});

it('of people who weigh the same each sits once', () => {
  const people = ['a', 'b', 'c', 'd', 'e'].map((id) => person(id, 70));
  const seats = () => [seatAt('1', 0.5), seatAt('2', 1.1), seatAt('3', 1.7)];
  const cars = [car(draw, { seats: seats() }), car(draw, { id: 'b', seats: seats() })];
  const found = seatPeople(problem(cars, people), solve);
  if (!found.ok) throw new Error(found.why);
  expect(found.places.map((p) => p.rider).sort()).toEqual(['a', 'b', 'c', 'd', 'e']);
  expect(new Set(found.places.map((p) => `${p.vehicle} ${p.seat}`)).size).toBe(5);
});
