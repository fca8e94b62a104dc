/**
 * Dead time and build-up of a brake: as stated, or as its parts tell; else as assumed.
 *
 *   t = t₀·max(1, n/n₀)^p
 *
 * t₀ time (s) that stands for a pipe of n₀ vehicles, n vehicles with that kind of brake in the train. p lies between 1, one flow
 * for so many volumes, and 1.5: the pipe itself throttles the more the longer it is. A lever, a spring in a coupler, a wire are as
 * quick in a long train as in a short one. Source: volume over flow; n₀ common practice, no source.
 */
import type { Quantity } from '../../base/quantity.ts';
import type { AssumedValues } from '../assumed.ts';
import type { Train } from '../train/types.ts';
import type { BrakeGear } from '../vehicle/types.ts';
import { type BrakeKind, isAirKind } from './kinds/index.ts';

type Vehicles = Train['vehicles'];

export interface GearTimes {
  readonly deadTime: Quantity;
  readonly buildUp: Quantity;
}

/** @param vehicles of the train that the gear is in */
export function gearTimes(
  gear: BrakeGear,
  vehicles: Vehicles,
  { pipe, deadTime, buildUp }: AssumedValues,
): GearTimes {
  const longer = pipeLength(gear.kind, vehicles, pipe.vehicles);
  return {
    deadTime: gear.deadTime ?? onPipe(deadTime[gear.kind], longer, pipe.growth),
    buildUp: gear.buildUp ?? onPipe(buildUp[gear.kind], longer, pipe.growth),
  };
}

/** A time with another before it. */
export const after = (by: Quantity, time: Quantity): Quantity => ({
  ...time,
  low: time.low + by.low,
  value: time.value + by.value,
  high: time.high + by.high,
});

/** A time on a pipe so many times as long. */
export const onPipe = (time: Quantity, longer: number, { low, value, high }: Quantity): Quantity => ({
  ...time,
  low: time.low * longer ** low,
  value: time.value * longer ** value,
  high: time.high * longer ** high,
});

/** How many times as long as the pipe of so many vehicles, never less than once. Once for what has no air. */
export const pipeLength = (kind: BrakeKind, vehicles: Vehicles, than: number): number =>
  isAirKind(kind) ? Math.max(1, vehiclesOn(kind, vehicles) / than) : 1;

export const vehiclesOn = (kind: BrakeKind, vehicles: Vehicles): number =>
  vehicles.filter(({ brakes }) => brakes.some((b) => b.kind === kind)).length;
