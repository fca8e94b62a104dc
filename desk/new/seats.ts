/** Who rides and where they sit, while it is being asked: more people than seats are said at once, with what to do. */
import { several } from '../../words/several.ts';
import type { Read } from './reading.ts';
import { sitsBehind, usualSeats } from './vehicles.ts';

export interface Seated {
  /** The driver not among them. */
  readonly ride: number;
  /** For those who ride, not the driver's. */
  readonly seats: number;
  readonly cars: number;
  /** On one car. */
  readonly each: number;
  /** Whether somebody counted the seats of one. */
  readonly counted: boolean;
  /** Whether the driver takes one of them. */
  readonly behind: boolean;
}

/** Nothing as long as nobody can say how many seats there are. */
export function seated(read: Read): Seated | undefined {
  const count = read.figure('cars.count');
  if (!count) return undefined;
  const ride =
    read.figures('people.weighed').length +
    (['people.adults', 'people.heavy', 'people.youths', 'people.children'] as const).reduce(
      (sum, key) => sum + read.count(key),
      0,
    );
  const cars = count.si;
  const gauge = read.figure('engine.gauge')?.si;
  const each = cars === 0 ? 0 : usualSeats(read, gauge);
  if (each === undefined) return undefined;
  const behind = sitsBehind(read, cars, gauge);
  return {
    ride,
    cars,
    each,
    seats: cars * each - (behind ? 1 : 0),
    counted: read.figure('cars.seats') !== undefined,
    behind,
  };
}

/** "12 ride, and there are 10 seats (2 cars of 5): 2 find none. …"; empty: everybody has a seat, or nobody can say. */
export function tellSeated(who: Seated | undefined): string {
  if (!who || who.ride <= who.seats) return '';
  const { ride, seats, cars, each, counted, behind } = who;
  const riders = `${ride} ${ride === 1 ? 'rides' : 'ride'}`;
  if (cars === 0) return `${riders}, and there is no car to sit on: say how many cars, or take nobody along.`;
  const made = `${several(cars, 'car')} of ${each}${behind ? ', one taken by the driver' : ''}`;
  const left = ride - seats;
  const told = counted ? '' : ' Nobody counted the seats of a car: they go by its length.';
  return `${riders}, and there ${seats === 1 ? 'is 1 seat' : `are ${seats} seats`} (${made}): ${left} ${left === 1 ? 'finds' : 'find'} none. Take fewer people along, or more cars.${told}`;
}
