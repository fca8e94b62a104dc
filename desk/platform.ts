/**
 * The platform: how much each car keeps on its lightest wheel as people sit now, who takes most of it, and the one move
 * that helps most. The same figure as the seating that is found for everybody.
 */
import type { Outing } from '../engine/outing/types.ts';
import {
  axlesBear,
  type Car,
  carMargin,
  carOf,
  mayRide,
  type Sitter,
  sitterOf,
} from '../engine/questions/seat/car.ts';
import type { SeatingProblem } from '../engine/questions/seat/types.ts';
import type { Rider } from '../engine/things/train/types.ts';
import { seatingProblem } from './seating.ts';

export interface CarSeated {
  readonly vehicle: string;
  /** Lightest wheel in the hardest place of the line ÷ an even wheel load. */
  readonly keeps: number;
  readonly people: number;
}

export interface Move {
  readonly rider: string;
  readonly to: { readonly vehicle: string; readonly seat: string };
  /** Who sits there, and takes the other's seat. */
  readonly changesWith?: string;
  /** What the worst car keeps then. */
  readonly keeps: number;
}

export interface Platform {
  /** Cars of which it can be told, front first. */
  readonly cars: readonly CarSeated[];
  /** Cars whose centre of gravity nobody has measured. */
  readonly unknown: readonly string[];
  /** The car that sets it. */
  readonly worst?: CarSeated;
  /** Whoever takes most of it by sitting where they sit. */
  readonly culprit?: { readonly rider: string; readonly keepsWithout: number };
  /** The one move that leaves the worst car with most; absent: none betters it. */
  readonly move?: Move;
}

/** Less than this is no difference that a person could see. */
const WORTH = 0.005;

type Seated = readonly (Rider | undefined)[];

const put = <T>(list: readonly T[], at: number, what: T): readonly T[] =>
  list.map((one, i) => (i === at ? what : one));

export function lookAtPlatform(outing: Outing): Platform {
  const problem = seatingProblem(outing);
  const cars = problem.cars.flatMap((c) => carOf(c, problem) ?? []);
  const seated = cars.map((car) => seatedOn(car, problem));
  const keeps = cars.map((car, i) => keepsWith(car, seated[i]));
  const worst = keeps.reduce<number | undefined>(
    (least, share, i) => (least === undefined || share < keeps[least] ? i : least),
    undefined,
  );
  const known = new Set(cars.map((car) => car.of.vehicle.id));
  const told = cars.map((car, i) => ({
    vehicle: car.of.vehicle.id,
    keeps: keeps[i],
    people: car.of.fixed.length + seated[i].filter((r) => r !== undefined).length,
  }));
  const unknown = problem.cars.map((c) => c.vehicle.id).filter((id) => !known.has(id));
  if (worst === undefined) return { cars: told, unknown };
  const culprit = culpritOn(cars[worst], seated[worst], keeps[worst]);
  const move = bestMove(problem, cars, seated, keeps, worst);
  return {
    cars: told,
    unknown,
    worst: told[worst],
    ...(culprit ? { culprit } : {}),
    ...(move ? { move } : {}),
  };
}

const seatedOn = (car: Car, { people }: SeatingProblem): Seated =>
  car.seats.map((seat) => people.find((r) => r.vehicle === car.of.vehicle.id && r.seat === seat.id));

const sitters = (seated: Seated): (Sitter | undefined)[] =>
  seated.map((rider) => rider && sitterOf(rider, rider.mass.value));

const keepsWith = (car: Car, seated: Seated): number => carMargin(car, sitters(seated)).wheel;

function culpritOn(car: Car, seated: Seated, now: number): Platform['culprit'] | undefined {
  const without = seated.flatMap((rider, i) =>
    rider ? [{ rider: rider.id, keepsWithout: keepsWith(car, put(seated, i, undefined)) }] : [],
  );
  const most = without.reduce<(typeof without)[number] | undefined>(
    (best, one) => (best === undefined || one.keepsWithout > best.keepsWithout ? one : best),
    undefined,
  );
  return most && most.keepsWithout > now + WORTH ? most : undefined;
}

/** Only a move from or on the worst car can better it. A child and whoever holds it stay on one car. */
function bestMove(
  problem: SeatingProblem,
  cars: readonly Car[],
  seated: readonly Seated[],
  keeps: readonly number[],
  worst: number,
): Move | undefined {
  let best: Move | undefined;
  const holds = new Set(problem.people.flatMap((r) => r.heldBy ?? []));
  const bound = (r: Rider | undefined): boolean =>
    r !== undefined && (r.heldBy !== undefined || holds.has(r.id));
  const may = (car: Car, people: Seated): boolean => {
    const on = sitters(people);
    return (
      mayRide(
        car,
        on.filter((s) => s !== undefined),
        problem,
      ) && axlesBear(car, on)
    );
  };
  seated[worst].forEach((rider, from) => {
    if (!rider || bound(rider)) return;
    cars.forEach((car, at) => {
      car.seats.forEach((seat, to) => {
        const other = seated[at][to];
        if (other === rider || bound(other)) return;
        if (!fits(rider, seat.most) || (other && !fits(other, cars[worst].seats[from].most))) return;
        const there =
          at === worst ? put(put(seated[worst], from, other), to, rider) : put(seated[at], to, rider);
        const here = at === worst ? there : put(seated[worst], from, other);
        if (!may(car, there) || !may(cars[worst], here)) return;
        const after = put(put(keeps, worst, keepsWith(cars[worst], here)), at, keepsWith(car, there));
        const least = Math.min(...after);
        if (least <= Math.max(keeps[worst] + WORTH, best?.keeps ?? 0)) return;
        best = {
          rider: rider.id,
          to: { vehicle: car.of.vehicle.id, seat: seat.id },
          ...(other ? { changesWith: other.id } : {}),
          keeps: least,
        };
      });
    });
  });
  return best;
}

const fits = (rider: Rider, most: number | undefined): boolean =>
  most === undefined || rider.mass.value <= most;
