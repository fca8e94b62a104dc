/**
 * One car as the seating sees it: sums per seat from which the margin of any arrangement follows by adding.
 */

import { GRAVITY } from '../../base/constants.ts';
import { groupLoads } from '../../things/train/loaded.ts';
import type { Rider } from '../../things/train/types.ts';
import { tareAlong } from '../../things/vehicle/tare.ts';
import type { Seat } from '../../things/vehicle/types.ts';
import { bodyFrom, type PointMass, riderPoint, statureOf, tareCentre } from '../balance/body.ts';
import type { CarMargin, CarToFill, SeatingProblem } from './types.ts';

export interface Car {
  readonly of: CarToFill;
  /** Free seats, front first. */
  readonly seats: readonly Seat[];
  /** Equal cars have equal keys. */
  readonly key: string;
  readonly base: number;
  readonly demand: number;
  readonly axles: number;
  readonly groupAxles: readonly number[];
  readonly rollShare: readonly number[];
  readonly amplification: number;
  /** The car with its fixed people. */
  readonly mass: number;
  readonly Z: number;
  readonly Y: number;
  readonly groupMass: readonly number[];
  /** A seated adult's centre of gravity above each seat, m. */
  readonly seatCentres: readonly number[];
  /** Share of a mass on each seat that each group takes. */
  readonly seatShares: readonly (readonly number[])[];
}

export function carOf(of: CarToFill, problem: SeatingProblem): Car | undefined {
  const centre = tareCentre(of.vehicle);
  if (!centre) return undefined;
  const { vehicle, fixed } = of;
  const seats = vehicle.seats
    .filter((s) => !s.driver && !fixed.some((f) => f.seat.id === s.id))
    .sort((a, b) => a.at - b.at || a.across - b.across);
  const points: PointMass[] = [
    ...vehicle.loads.map((l) => ({ mass: l.mass.value, at: l.at, across: l.across, height: l.height })),
    ...fixed.map((f) => riderPoint(f, problem.adultCentre, 0)),
  ];
  const body = bodyFrom(vehicle, problem.base, vehicle.tare.value, centre.height.value, points);
  return {
    of,
    seats,
    key: keyOf(of, seats, centre.height.value),
    base: problem.base,
    demand: problem.sideDemand,
    axles: vehicle.groups.reduce((sum, g) => sum + g.axles, 0),
    groupAxles: vehicle.groups.map((g) => g.axles),
    rollShare: body.rollShare,
    amplification: body.amplification,
    mass: body.mass,
    Z: body.Z,
    Y: body.Y,
    groupMass: body.groupMass,
    seatCentres: seats.map((s) => (s.adultCentre ?? problem.adultCentre).value),
    seatShares: seats.map((s) =>
      groupLoads(vehicle, 0, 0, [{ mass: 1, at: s.at }]).map((load) => load / GRAVITY),
    ),
  };
}

const keyOf = ({ vehicle, fixed }: CarToFill, seats: readonly Seat[], centre: number): string =>
  JSON.stringify([
    vehicle.tare.value,
    centre,
    tareAlong(vehicle),
    vehicle.groups.map((g) => [g.at, g.axles, g.wheelBase, g.tareShare ?? null]),
    vehicle.loads.map((l) => [l.mass.value, l.at, l.across, l.height]),
    vehicle.ratings,
    vehicle.suspension?.rollStiffness ?? null,
    seats.map((s) => [s.at, s.across, s.height, s.adultCentre?.value ?? null, s.most ?? null]),
    fixed.map((f) => [
      f.seat.at,
      f.seat.across,
      f.seat.height,
      f.seat.adultCentre?.value ?? null,
      f.rider.mass.value,
      f.rider.ageGroup,
    ]),
  ]);

/** What a person adds wherever they sit. */
export interface Sitter {
  readonly mass: number;
  /** Their centre of gravity above a seat ÷ an adult's. */
  readonly stature: number;
  readonly adult: boolean;
}

export const sitterOf = (rider: Rider, mass: number): Sitter => ({
  mass,
  stature: statureOf(rider),
  adult: rider.ageGroup === 'adult',
});

/** Margin of a car with these people on its free seats (undefined: empty seat). */
export function carMargin(car: Car, sitters: readonly (Sitter | undefined)[]): CarMargin {
  let { mass, Z, Y } = car;
  const groups = [...car.groupMass];
  sitters.forEach((sitter, i) => {
    if (!sitter) return;
    mass += sitter.mass;
    Z += sitter.mass * (car.seats[i].height + car.seatCentres[i] * sitter.stature);
    Y += sitter.mass * car.seats[i].across;
    for (let g = 0; g < groups.length; g++) groups[g] += sitter.mass * car.seatShares[i][g];
  });
  const roll = (car.amplification * (Math.abs(Y) + Z * car.demand)) / car.base;
  let wheel = Infinity;
  let trucks = Infinity;
  for (let g = 0; g < groups.length; g++) {
    const even = (mass * car.groupAxles[g]) / car.axles;
    wheel = Math.min(wheel, (groups[g] - 2 * car.rollShare[g] * roll) / even);
    trucks = Math.min(trucks, groups[g] / even);
  }
  return { wheel, sideways: 1 - (2 * roll) / mass, trucks };
}

/** Ratings and host's rules that a car's people must keep, wherever they sit on it. */
export function mayRide(car: Car, sitters: readonly Sitter[], { rules }: SeatingProblem): boolean {
  const { vehicle, fixed } = car.of;
  const all = fixed.filter((f) => f.rider.duty === 'rider');
  const riders = sitters.length + all.length;
  const adults =
    sitters.filter((s) => s.adult).length + all.filter((f) => f.rider.ageGroup === 'adult').length;
  const goods =
    sitters.reduce((sum, s) => sum + s.mass, 0) +
    fixed.reduce((sum, f) => sum + f.rider.mass.value, 0) +
    vehicle.loads.reduce((sum, l) => sum + l.mass.value, 0);
  const { ratings } = vehicle;
  return (
    sitters.length <= car.seats.length &&
    riders <= (rules.mostRidersPerCar ?? Infinity) &&
    adults <= (rules.ridersPerAxle ?? Infinity) * car.axles &&
    sitters.length + fixed.length <= (ratings.riders ?? Infinity) &&
    goods <= (ratings.load ?? Infinity)
  );
}

/** Axle ratings of one arrangement. */
export function axlesBear(car: Car, sitters: readonly (Sitter | undefined)[]): boolean {
  const rating = car.of.vehicle.ratings.axleLoad;
  if (rating === undefined) return true;
  return car.groupMass.every((mass, g) => {
    const load = sitters.reduce((sum, s, i) => sum + (s ? s.mass * car.seatShares[i][g] : 0), mass);
    return load <= rating * car.groupAxles[g] * (1 + 1e-12);
  });
}
