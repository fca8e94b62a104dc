/** What no seating can beat, whatever the people's masses: the honest bound where masses were rounded. */
import type { Car } from './car.ts';
import { sitterOf } from './car.ts';
import type { SeatingProblem } from './types.ts';

/**
 * The worst car stands no lower than all cars taken together (of several fractions the greatest is at least
 * the sum of the tops over the sum of the bottoms):
 *
 *   worst ≤ 1 − (2·d/b)·ΣZ/Σm
 *
 * with everyone on the lowest seat there is, every pair balanced across, every truck even.
 */
export function boundOfAll(problem: SeatingProblem, cars: readonly Car[]): number {
  const lowest = (stature: number): number =>
    Math.min(...cars.flatMap((c) => c.seats.map((s, i) => s.height + c.seatCentres[i] * stature)));
  let mass = cars.reduce((sum, c) => sum + c.mass, 0);
  let Z = cars.reduce((sum, c) => sum + c.Z, 0);
  for (const person of problem.people) {
    const { mass: m, stature } = sitterOf(person, person.mass.value);
    mass += m;
    Z += m * lowest(stature);
  }
  return 1 - (2 * problem.sideDemand * Z) / (problem.base * mass);
}
