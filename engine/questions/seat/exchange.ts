/** Exchanging units between the worst car and the others: mends what rounding the masses cost. */
import { arrange } from './arrange.ts';
import { type Car, mayRide } from './car.ts';
import { slotsOfUnits } from './patterns.ts';
import type { SeatingProblem } from './types.ts';
import type { Unit } from './units.ts';

const MOST_ROUNDS = 60;

/** @param given units on each car, in the order of `cars`; returns them after the last exchange that helped */
export function exchanged(
  problem: SeatingProblem,
  cars: readonly Car[],
  given: readonly (readonly Unit[])[],
): readonly (readonly Unit[])[] {
  const margin = (car: Car, units: readonly Unit[]): number => {
    const slots = slotsOfUnits(units, 0);
    return mayRide(
      car,
      slots.map((s) => s.sitter),
      problem,
    )
      ? arrange(car, slots, problem.rules).margin
      : -Infinity;
  };
  let now = given;
  let margins = now.map((units, i) => margin(cars[i], units));
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const worst = margins.indexOf(Math.min(...margins));
    const better = bestExchange(now, margins, worst, (i, units) => margin(cars[i], units));
    if (!better) break;
    now = better.units;
    margins = better.margins;
  }
  return now;
}

interface State {
  readonly units: readonly (readonly Unit[])[];
  readonly margins: number[];
}

function bestExchange(
  now: readonly (readonly Unit[])[],
  margins: readonly number[],
  worst: number,
  margin: (car: number, units: readonly Unit[]) => number,
): State | undefined {
  let best: State | undefined;
  let most = margins[worst] + 1e-9;
  now.forEach((units, other) => {
    if (other === worst) return;
    for (const give of now[worst]) {
      for (const take of [undefined, ...units]) {
        const mine = swap(now[worst], give, take);
        const theirs = swap(units, take, give);
        const here = margin(worst, mine);
        if (here <= most) continue;
        const there = margin(other, theirs);
        if (there <= most) continue;
        most = Math.min(here, there);
        best = {
          units: now.map((u, i) => (i === worst ? mine : i === other ? theirs : u)),
          margins: margins.map((m, i) => (i === worst ? here : i === other ? there : m)),
        };
      }
    }
  });
  return best;
}

const swap = (units: readonly Unit[], out: Unit | undefined, into: Unit | undefined): Unit[] => [
  ...units.filter((u) => u !== out),
  ...(into ? [into] : []),
];
