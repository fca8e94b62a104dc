/** Why a car is seated as it is, in the trade's terms. */
import type { Rider } from '../../things/train/types.ts';
import type { Car } from './car.ts';
import { middleOf, type On, offTrucks } from './custom.ts';
import type { CarMargin, Reason } from './types.ts';

/** Trucks within this of even are called even. */
const EVEN = 0.9;

export function reasonsFor(car: Car, people: readonly (Rider | undefined)[], margin: CarMargin): Reason[] {
  const on = people.flatMap((rider, i) => (rider ? [{ rider, seat: car.seats[i] }] : []));
  const { groups } = car.of.vehicle;
  const middle = middleOf(car.of.vehicle);
  if (on.length === 0) return ['left-empty'];
  const reasons: Reason[] = [];
  const nearest = Math.min(...car.seats.map((s) => Math.abs(s.at - middle)));
  if (on.length === 1 && Math.abs(on[0].seat.at - middle) < nearest + 1e-9) reasons.push('single-in-middle');
  const adults = on.filter((p) => p.rider.ageGroup === 'adult');
  if (adults.length === 2 && groups.length > 1 && opposite(adults.map((a) => a.seat.at - middle))) {
    reasons.push(overTrucks(car, adults) ? 'pair-over-trucks' : 'pair-about-middle');
  }
  if (on.some((p) => p.rider.heldBy !== undefined)) reasons.push('child-ahead-of-adult');
  if (groups.length > 1 && on.length > 2 && margin.trucks >= EVEN) reasons.push('even-over-trucks');
  return reasons;
}

/** On the seats nearest to the trucks, of all that the car has free. */
function overTrucks({ of, seats }: Car, pair: readonly On[]): boolean {
  const { vehicle } = of;
  const ends = [vehicle.groups[0], vehicle.groups[vehicle.groups.length - 1]];
  const least = ends.reduce((sum, g) => sum + Math.min(...seats.map((s) => Math.abs(s.at - g.at))), 0);
  return offTrucks(vehicle, pair) < least + 1e-9;
}

const opposite = ([a, b]: readonly number[]): boolean => a * b < 0;
