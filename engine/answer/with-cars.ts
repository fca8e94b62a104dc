/**
 * The same outing with another number of cars: cars beyond the train's own are copies of its last, laden as the fullest
 * that its seats allow: a last car with a child alone on it would have the counts promise a train that no day's crowd leaves by.
 */
import type { Outing } from '../outing/types.ts';
import { onPipe, pipeLength, vehiclesOn } from '../things/brake/times.ts';
import { isCar } from '../things/train/cars.ts';
import type { Rider } from '../things/train/types.ts';
import type { BrakeGear, Vehicle } from '../things/vehicle/types.ts';

/** The outing with exactly n cars. Undefined if the train has no car to copy. */
export function withCars(outing: Outing, n: number): Outing | undefined {
  const cars = outing.train.vehicles.filter(isCar);
  const pattern = cars[cars.length - 1];
  if (!pattern) return undefined;
  const laden = fullest(outing, cars, pattern);
  const kept = new Set(cars.slice(0, n).map((c) => c.id));
  const vehicles = outing.train.vehicles.filter((v) => !isCar(v) || kept.has(v.id));
  const riders = guardsAboard(outing, vehicles, cars[n - 1]);
  for (let i = cars.length; i < n; i++) {
    const id = `${pattern.id}+${i}`;
    vehicles.push({ ...pattern, id });
    // A copied car has no driver or guard of its own.
    for (const { heldBy, ...rider } of laden)
      riders.push({
        ...rider,
        id: `${rider.id}+${i}`,
        vehicle: id,
        duty: 'rider',
        ...(heldBy === undefined ? {} : { heldBy: `${heldBy}+${i}` }),
      });
  }
  return { ...outing, riders, train: { ...outing.train, vehicles: filledLater(vehicles, outing) } };
}

/** Times that are stated were taken on the train as it is: a longer pipe takes longer, until somebody times it. */
function filledLater(vehicles: readonly Vehicle[], { train, assumed }: Outing): Vehicle[] {
  const later = (gear: BrakeGear): BrakeGear => {
    const { kind, deadTime, buildUp } = gear;
    const longer = pipeLength(kind, vehicles, vehiclesOn(kind, train.vehicles));
    if (longer === 1) return gear;
    const { growth } = assumed.pipe;
    return {
      ...gear,
      ...(deadTime ? { deadTime: onPipe(deadTime, longer, growth) } : {}),
      ...(buildUp ? { buildUp: onPipe(buildUp, longer, growth) } : {}),
    };
  };
  return vehicles.map((v) => ({ ...v, brakes: v.brakes.map(later) }));
}

/** Who rides on the car that carries most, of those whose riders find their seats on the pattern; of equals, the last. */
function fullest({ riders }: Outing, cars: readonly Vehicle[], pattern: Vehicle): readonly Rider[] {
  const seats = new Set(pattern.seats.map((s) => s.id));
  const loads = cars
    .map(({ id }) => riders.filter((r) => r.vehicle === id))
    .filter((on) => on.every((r) => r.seat === undefined || seats.has(r.seat)));
  const weight = (on: readonly Rider[]): number => on.reduce((all, r) => all + r.mass.value, 0);
  return loads.reduce<readonly Rider[]>((most, on) => (weight(on) >= weight(most) ? on : most), []);
}

/** Who rides on the vehicles kept. Where the guard's car stays behind, someone on the last car kept is guard. */
function guardsAboard(outing: Outing, kept: readonly Vehicle[], last: Vehicle | undefined): Rider[] {
  const stays = (r: Rider): boolean => r.vehicle === undefined || kept.some((v) => v.id === r.vehicle);
  const riders = outing.riders.filter(stays);
  if (!outing.riders.some((r) => r.duty === 'guard' && !stays(r))) return riders;
  const acts = riders.findLast((r) => r.vehicle === last?.id && r.duty === 'rider' && r.ageGroup === 'adult');
  return riders.map((r) => (r === acts ? { ...r, duty: 'guard' } : r));
}
