/**
 * Where driver and guard ride, and which vehicles a person's arm reaches from there: what cannot be worked from
 * a seat does not count (common practice, no source).
 */
import type { BrakeGear, Vehicle } from '../vehicle/types.ts';
import { isCar } from './cars.ts';
import type { LoadedTrain } from './loaded.ts';
import type { Rider, Train } from './types.ts';

/** A train with its people. */
export interface Aboard {
  readonly train: Train;
  readonly riders: readonly Rider[];
}

/** Vehicles on which someone with a duty rides, by index. */
export function placesOf({ train, riders }: Aboard, duty: Rider['duty']): number[] {
  return train.vehicles.flatMap((v, i) =>
    riders.some((r) => r.duty === duty && r.vehicle === v.id) ? [i] : [],
  );
}

/** Where the drivers ride; nobody named: on the first driver's seat, else on the first engine. */
export function driverPlaces(aboard: Aboard): number[] {
  const named = placesOf(aboard, 'driver');
  if (named.length > 0) return named;
  const { vehicles } = aboard.train;
  const seat = vehicles.findIndex((v) => v.seats.some((s) => s.driver));
  return [Math.max(0, seat >= 0 ? seat : vehicles.findIndex((v) => v.role === 'engine'))];
}

/**
 * How far the eyes of the leading driver are behind the train's head, m. Where nobody drives, or on no seat: on the
 * driver's seat farthest back there, else at the vehicle's rear end.
 */
export function driverBehind(aboard: Aboard, { vehicles }: LoadedTrain): number {
  const eyes = driverPlaces(aboard).map((i) => {
    const { behind, vehicle, riders } = vehicles[i];
    const sits = riders.filter((r) => r.rider.duty === 'driver').map((r) => r.seat.at);
    if (sits.length > 0) return behind + Math.min(...sits);
    const seats = vehicle.seats.filter((s) => s.driver).map((s) => s.at);
    return behind + (seats.length > 0 ? Math.max(...seats) : vehicle.length);
  });
  return Math.min(...eyes);
}

/** Cars that run ahead of the leading driver: the train is propelled, or driven from the wrong end. */
export const carsAheadOfDriver = (aboard: Aboard): number =>
  aboard.train.vehicles.slice(0, Math.min(...driverPlaces(aboard))).filter(isCar).length;

/**
 * Vehicles whose handles are within a driver's reach: the one that carries the driver, and its engine and
 * tender. A second engine is another driver's.
 */
export const driverReach = (aboard: Aboard): Set<number> => reachFrom(aboard, driverPlaces(aboard));

/** Of the leading driver alone, who sees what is ahead. */
export const leadingReach = (aboard: Aboard): Set<number> =>
  reachFrom(aboard, [Math.min(...driverPlaces(aboard))]);

function reachFrom({ train: { vehicles } }: Aboard, places: readonly number[]): Set<number> {
  const role = (i: number): Vehicle['role'] | undefined => vehicles[i]?.role;
  const reach = new Set<number>();
  for (const at of places) {
    reach.add(at);
    for (const way of [-1, 1]) {
      const next = at + way;
      if (role(at) === 'engine') {
        if (role(next) === 'tender') reach.add(next);
      } else if (role(next) === 'engine') reach.add(next);
      else if (role(at) !== 'tender' && role(next) === 'tender') {
        reach.add(next);
        if (role(next + way) === 'engine') reach.add(next + way);
      }
    }
  }
  return reach;
}

/** Who can put on a brake of a standing train. */
export type Holder = 'driver' | 'guard' | 'riders';

/**
 * Who can put on each parking brake: the driver what is within reach, the guard what is on the guard's own
 * vehicle, riders the rest.
 */
export function holderOf(aboard: Aboard): (gear: BrakeGear, vehicle: number) => Holder {
  const own = new Set(driverPlaces(aboard));
  const reach = driverReach(aboard);
  const guards = new Set(placesOf(aboard, 'guard'));
  return (gear, vehicle) => {
    if (own.has(vehicle) || (gear.workedBy === 'driver' && reach.has(vehicle))) return 'driver';
    return guards.has(vehicle) ? 'guard' : 'riders';
  };
}
