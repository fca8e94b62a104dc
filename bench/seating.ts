/**
 * Seats found by the mixed-integer solver, by number of riders, against as many random seatings as fit into
 * the same time: how much worse the best of those is.
 */
import { loadSolver } from '../desk/seating.ts';
import { type Car, carMargin, carOf, type Sitter, sitterOf } from '../engine/questions/seat/car.ts';
import { seatPeople } from '../engine/questions/seat/seat.ts';
import type { SeatingProblem } from '../engine/questions/seat/types.ts';
import { adultCentre, car, person } from '../tests/support/balance.ts';
import { drawer } from '../tests/support/random-outings.ts';
import { type BenchRow, ms, quickest } from './row.ts';

function problem(riders: number, cars: number): SeatingProblem {
  const draw = drawer(riders * 31 + cars);
  return {
    cars: Array.from({ length: cars }, (_, i) => ({ vehicle: car(draw, { id: `car${i}` }), fixed: [] })),
    people: Array.from({ length: riders }, (_, i) => person(`p${i}`, Math.round(draw(25, 110)))),
    base: 0.2,
    adultCentre,
    sideDemand: 0.06,
    rules: { heldChild: 'in-front' },
  };
}

/** Best worst margin of random seatings tried for so long. */
function byChance(p: SeatingProblem, time: number): { best: number; tried: number } {
  const draw = drawer(5);
  const cars = p.cars.map((c) => carOf(c, p) as Car);
  const sitters = p.people.map((r) => sitterOf(r, r.mass.value));
  const places = cars.flatMap((c, i) => c.seats.map((_, s) => [i, s] as const));
  let [best, tried] = [-Infinity, 0];
  const start = performance.now();
  while (performance.now() - start < time) {
    const free = [...places];
    const on = cars.map((c) => c.seats.map((): Sitter | undefined => undefined));
    for (const sitter of sitters) {
      const [[i, s]] = free.splice(Math.floor(draw(0, free.length)), 1);
      on[i][s] = sitter;
    }
    const worst = Math.min(...cars.map((c, i) => carMargin(c, on[i]).wheel));
    if (worst > best) best = worst;
    tried++;
  }
  return { best, tried };
}

export async function run(): Promise<BenchRow[]> {
  const solve = await loadSolver();
  return [
    [8, 3],
    [16, 5],
    [24, 7],
    [30, 8],
  ].map(([riders, cars]) => {
    const p = problem(riders, cars);
    const time = quickest(() => {
      seatPeople(p, solve);
    }, 3);
    const found = seatPeople(p, solve);
    const chance = byChance(p, time);
    const worst = found.ok ? found.worst : Number.NaN;
    const gap = found.ok ? (found.bound - found.worst) * 100 : Number.NaN;
    return {
      work: `seating: ${riders} riders of different weights on ${cars} cars`,
      ours: ms(time),
      against: `${chance.tried} random seatings in the same time`,
      theirs: ms(time),
      ratio: 1,
      ourError: `worst car keeps ${(worst * 100).toFixed(1)} %, at most ${gap.toFixed(1)} points below any seating`,
      theirError: `worst car keeps ${(chance.best * 100).toFixed(1)} %`,
    };
  });
}
