/**
 * The train with its people on: masses, offsets behind the train's head, and the load on each axle group.
 */

import { GRAVITY } from '../../base/constants.ts';
import { tareAlong } from '../vehicle/tare.ts';
import type { AxleGroup, Seat, Vehicle } from '../vehicle/types.ts';
import type { Rider, Train } from './types.ts';

export interface SeatedRider {
  readonly rider: Rider;
  readonly seat: Seat;
}

export interface LoadedVehicle {
  readonly vehicle: Vehicle;
  readonly index: number;
  /** Distance of its front end behind the train's head, m. */
  readonly behind: number;
  readonly riders: readonly SeatedRider[];
  /** Tare plus loads plus riders, kg: likely, least and most. */
  readonly mass: number;
  readonly massLow: number;
  readonly massHigh: number;
  /** Mass with the inertia of its wheels, kg. */
  readonly effectiveMass: number;
  /** Centre of all masses from its front end, m. */
  readonly centreAt: number;
  /** Static load of each axle group, N, on level track; sums to mass·g. */
  readonly groupLoads: readonly number[];
}

export interface LoadedTrain {
  readonly train: Train;
  readonly riders: readonly Rider[];
  readonly vehicles: readonly LoadedVehicle[];
  readonly length: number;
  readonly mass: number;
  readonly effectiveMass: number;
}

interface Point {
  readonly mass: number;
  readonly at: number;
}

/**
 * Loads on axle groups, N. Two groups by the lever rule; one carries all; more share the tare by
 * `tareShare` (evenly where not given) and each further mass by the two groups around it.
 */
export function groupLoads(
  vehicle: Vehicle,
  tare: number,
  centreAt: number,
  points: readonly Point[],
): number[] {
  const groups = vehicle.groups;
  const loads = groups.map(() => 0);
  if (groups.length > 2 || groups.some((g) => g.tareShare !== undefined)) {
    const given = groups.reduce((sum, g) => sum + (g.tareShare ?? 0), 0);
    const missing = groups.filter((g) => g.tareShare === undefined).length;
    groups.forEach((g, i) => {
      loads[i] += tare * GRAVITY * (g.tareShare ?? (1 - given) / missing);
    });
  } else share(groups, { mass: tare, at: centreAt }, loads);
  for (const point of points) share(groups, point, loads);
  return loads;
}

/** Put one mass on the two groups around it (or the outer two when it overhangs). */
function share(groups: readonly AxleGroup[], point: Point, loads: number[]): void {
  if (groups.length === 1) {
    loads[0] += point.mass * GRAVITY;
    return;
  }
  let i = 0;
  while (i < groups.length - 2 && point.at > groups[i + 1].at) i++;
  const rearShare = (point.at - groups[i].at) / (groups[i + 1].at - groups[i].at);
  loads[i] += point.mass * GRAVITY * (1 - rearShare);
  loads[i + 1] += point.mass * GRAVITY * rearShare;
}

/** Riders that have a vehicle and seat, by vehicle id. Riders not seated count nowhere: a finding says so. */
export function loadTrain(train: Train, riders: readonly Rider[]): LoadedTrain {
  let behind = 0;
  const on = new Map<string, Rider[]>();
  for (const rider of riders) {
    if (rider.vehicle === undefined) continue;
    const there = on.get(rider.vehicle);
    if (there) there.push(rider);
    else on.set(rider.vehicle, [rider]);
  }
  const vehicles = train.vehicles.map((vehicle, index) => {
    const loaded = loadVehicle(vehicle, index, behind, on.get(vehicle.id) ?? []);
    behind += vehicle.length;
    return loaded;
  });
  return {
    train,
    riders,
    vehicles,
    length: behind,
    mass: vehicles.reduce((sum, v) => sum + v.mass, 0),
    effectiveMass: vehicles.reduce((sum, v) => sum + v.effectiveMass, 0),
  };
}

function loadVehicle(
  vehicle: Vehicle,
  index: number,
  behind: number,
  riders: readonly Rider[],
): LoadedVehicle {
  const seated = riders.flatMap((rider) => {
    const seat = vehicle.seats.find((s) => s.id === rider.seat);
    return seat ? [{ rider, seat }] : [];
  });
  const tareAt = tareAlong(vehicle);
  const points: Point[] = [
    ...vehicle.loads.map((l) => ({ mass: l.mass.value, at: l.at })),
    ...seated.map(({ rider, seat }) => ({ mass: rider.mass.value, at: seat.at })),
  ];
  const added = points.reduce((sum, p) => sum + p.mass, 0);
  const moment = points.reduce((sum, p) => sum + p.mass * p.at, vehicle.tare.value * tareAt);
  const total = (pick: 'low' | 'value' | 'high'): number =>
    vehicle.tare[pick] +
    vehicle.loads.reduce((sum, l) => sum + l.mass[pick], 0) +
    seated.reduce((sum, s) => sum + s.rider.mass[pick], 0);
  const mass = vehicle.tare.value + added;
  return {
    vehicle,
    index,
    behind,
    riders: seated,
    mass,
    massLow: total('low'),
    massHigh: total('high'),
    effectiveMass: mass + vehicle.tare.value * vehicle.rotatingShare.value,
    centreAt: moment / mass,
    groupLoads: groupLoads(vehicle, vehicle.tare.value, tareAt, points),
  };
}
