/**
 * A vehicle with its people as one stiff body on its wheels: the few sums from which every balance
 * question is answered.
 *
 *   Z = Σ m·z   Y = Σ m·y   n_i = mass on group i   σ_i = its share of the axles
 *
 * z above the rail (m), y to the left (m). A sideways moment is shared by the groups as their axles: equal
 * wheels on equal springs, or on a frame that is a little elastic. On springs of roll stiffness K the body
 * rolls, and every moment acts as if it were larger by K/(K − g·Z).
 */

import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import { groupLoads, type LoadedVehicle, type SeatedRider } from '../../things/train/loaded.ts';
import type { Rider } from '../../things/train/types.ts';
import { tareAlong } from '../../things/vehicle/tare.ts';
import type { Load, Vehicle } from '../../things/vehicle/types.ts';

export interface Body {
  readonly vehicle: Vehicle;
  /** Between rail contacts, m. */
  readonly base: number;
  /** kg */
  readonly mass: number;
  readonly Z: number;
  readonly Y: number;
  /** Mass carried by each group on level track, kg; sums to `mass`. */
  readonly groupMass: readonly number[];
  readonly rollShare: readonly number[];
  /** ≥ 1; Infinity: the springs cannot hold it upright. */
  readonly amplification: number;
}

export interface PointMass {
  readonly mass: number;
  readonly at: number;
  readonly across: number;
  readonly height: number;
}

/**
 * Share of a grown person's sitting height that a younger one has: stature of about 5 to 8, 12 to 17 years
 * over an adult's (CDC 2000 stature-for-age, from memory); the high end is kept nearer to the adult's.
 */
const stature: Readonly<Record<Rider['ageGroup'], { low: number; value: number; high: number }>> = {
  adult: { low: 1, value: 1, high: 1 },
  youth: { low: 0.85, value: 0.93, high: 1 },
  child: { low: 0.65, value: 0.73, high: 0.85 },
};

/** Share of an adult's height above the seat, likely. */
export const statureOf = (rider: Rider): number => stature[rider.ageGroup].value;

/** Centre of gravity of a seated rider above the seat, m. @param adult a seated adult's, in the seat's posture */
export function riderCentre(rider: Rider, adult: Quantity): Quantity {
  const s = stature[rider.ageGroup];
  return { ...adult, low: adult.low * s.low, value: adult.value * s.value, high: adult.high * s.high };
}

export interface TareCentre {
  readonly height: Quantity;
  /** From a file; else the highest that the vehicle's shape allows. */
  readonly known: boolean;
}

/**
 * Height of the empty vehicle's centre of gravity, or where nobody measured it the highest plausible one: a
 * car's is no higher than its seats or its envelope. Undefined where its shape sets no bound.
 */
export function tareCentre(vehicle: Vehicle): TareCentre | undefined {
  if (vehicle.centreHeight) return { height: vehicle.centreHeight, known: true };
  const seats = vehicle.seats.map((s) => s.height);
  const car = vehicle.role === 'car' || vehicle.role === 'guard';
  const tops = [
    ...(vehicle.envelope ? [vehicle.envelope.height] : []),
    ...(car && seats.length > 0 ? [Math.max(...seats)] : []),
  ];
  if (tops.length === 0) return undefined;
  const top = Math.min(...tops);
  return {
    height: { value: top, low: top, high: top, how: 'assumed', source: 'top of the vehicle' },
    known: false,
  };
}

/**
 * @param adultCentre of a seated adult above a seat whose posture is not known, m
 * @param position −1 … 1: how far the spreads are moved to the unsafe side (1: riders heavy and high, tare
 *   light and high)
 */
export function bodyOf(
  loaded: LoadedVehicle,
  base: number,
  adultCentre: Quantity,
  position: number,
): Body | undefined {
  const centre = tareCentre(loaded.vehicle);
  if (!centre) return undefined;
  const { vehicle } = loaded;
  const height = pick(centre.height, position);
  const tare = pick(vehicle.tare, -position);
  const points = [
    ...vehicle.loads.map((l) => loadPoint(l, height, position)),
    ...loaded.riders.map((r) => riderPoint(r, adultCentre, position)),
  ];
  return bodyFrom(vehicle, base, tare, height, points);
}

const loadPoint = (l: Load, tareHeight: number, position: number): PointMass => ({
  mass: pick(l.mass, l.height > tareHeight ? position : -position),
  at: l.at,
  across: l.across,
  height: l.height,
});

export const riderPoint = (
  { rider, seat }: SeatedRider,
  adultCentre: Quantity,
  position: number,
): PointMass => ({
  mass: pick(rider.mass, position),
  at: seat.at,
  across: seat.across,
  height: seat.height + pick(riderCentre(rider, seat.adultCentre ?? adultCentre), position),
});

export function bodyFrom(
  vehicle: Vehicle,
  base: number,
  tare: number,
  tareHeight: number,
  points: readonly PointMass[],
): Body {
  const tareAt = tareAlong(vehicle);
  const groupMass = groupLoads(vehicle, tare, tareAt, points).map((load) => load / GRAVITY);
  const axles = vehicle.groups.reduce((sum, g) => sum + g.axles, 0);
  const Z = points.reduce((sum, p) => sum + p.mass * p.height, tare * tareHeight);
  return {
    vehicle,
    base,
    mass: points.reduce((sum, p) => sum + p.mass, tare),
    Z,
    Y: points.reduce((sum, p) => sum + p.mass * p.across, 0),
    groupMass,
    rollShare: vehicle.groups.map((g) => g.axles / axles),
    amplification: amplification(vehicle, Z),
  };
}

/** K/(K − g·Z) with the softest springs that the file allows. */
const amplification = (vehicle: Vehicle, Z: number): number =>
  amplificationOf(vehicle.suspension?.rollStiffness?.low, Z);

/** @param stiffness K, N·m/rad; absent: no springs */
export function amplificationOf(stiffness: number | undefined, Z: number): number {
  if (stiffness === undefined) return 1;
  return stiffness > GRAVITY * Z ? stiffness / (stiffness - GRAVITY * Z) : Infinity;
}

/** The same body with a further point mass on it (a negative mass takes one off). */
export function withPoint(body: Body, point: PointMass): Body {
  const added = groupLoads(body.vehicle, 0, 0, [point]);
  // Where the file shares the tare by hand, `groupLoads` shares a tare of nothing: only the point remains.
  const Z = body.Z + point.mass * point.height;
  return {
    ...body,
    mass: body.mass + point.mass,
    Z,
    Y: body.Y + point.mass * point.across,
    groupMass: body.groupMass.map((m, i) => m + added[i] / GRAVITY),
    amplification: amplification(body.vehicle, Z),
  };
}

/** The same body with its people's masses shifted sideways by a moment m·y, kg·m to the left. */
export const leaning = (body: Body, moment: number): Body => ({ ...body, Y: body.Y + moment });

/** The same body with its masses raised by a moment m·z, kg·m (lowered where negative). */
export function raised(body: Body, moment: number): Body {
  const Z = body.Z + moment;
  return { ...body, Z, amplification: amplification(body.vehicle, Z) };
}

export const centreHeight = (body: Body): number => body.Z / body.mass;
