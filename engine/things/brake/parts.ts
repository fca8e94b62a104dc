/**
 * From what an owner writes of a brake to volumes and passages, and which parts are still to be measured.
 */
import type { BrakeGear, BrakeRigging, BrakeSupply, Vehicle } from '../vehicle/types.ts';
import { type Piston, SEAL_PRESSURE } from './piston.ts';

/** Flow coefficient of a choke or valve: sharp edge 0.61–0.65 (Moss 1906), rounded up to 0.85. */
export const CHOKE_COEFFICIENT = 0.65;
/** Friction factor of small smooth hose at brake flows (Blasius near Re 10⁴: 0.032). */
const HOSE_FRICTION = 0.03;
/** Pressure heads lost per vehicle in entry, exit and two couplings of the hose (handbook order, from memory). */
const HOSE_LOSSES = 2.5;
/** Space that the piston leaves at rest, with its pipe, as a share of the swept volume where not stated. */
const CLEARANCE_SHARE = 0.15;

const disc = (diameter: number): number => (Math.PI / 4) * diameter * diameter;

/** C·A of a choke, m². */
export const chokeArea = (diameter: number): number => CHOKE_COEFFICIENT * disc(diameter);

/**
 * C·A of a length of hose, m²: the orifice that loses as many velocity heads.
 *
 *   C = 1/√(ζ + f·L/d)
 *
 * diameter d, length L m · ζ couplings and ends, f friction factor. Incompressible loss; for the large
 * pressure ratios of a burst hose it passes a little too much. Source: Darcy and Weisbach.
 */
export const hoseArea = (diameter: number, length: number): number =>
  disc(diameter) / Math.sqrt(HOSE_LOSSES + (HOSE_FRICTION * length) / diameter);

export interface CylinderParts {
  readonly piston: Piston;
  /** Area of all pistons together, m². */
  readonly area: number;
  /** C·A of the passage to the cylinders, m². */
  readonly choke: number;
  /** Parts taken by rule because they are not stated. */
  readonly assumed: readonly string[];
}

/** Cylinders of a gear as one, or the field that is missing. */
export function cylinderParts(gear: BrakeGear): CylinderParts | { readonly missing: string } {
  const rigging = gear.rigging;
  if (!rigging) return { missing: 'rigging' };
  const area = rigging.cylinders * disc(rigging.bore);
  const swept = rigging.stroke === undefined ? undefined : area * rigging.stroke;
  if (swept === undefined) return { missing: 'rigging.stroke' };
  const passage = rigging.chokeDiameter ?? rigging.hoseDiameter;
  if (passage === undefined) return { missing: 'rigging.hoseDiameter' };
  const stated = rigging.cylinderVolume !== undefined && rigging.cylinderVolume > swept;
  const clearance = stated ? (rigging.cylinderVolume ?? 0) - swept : CLEARANCE_SHARE * swept;
  return {
    piston: {
      clearance,
      swept,
      strokeAt: Math.max(SEAL_PRESSURE, (rigging.springForce ?? 0) / disc(rigging.bore)),
    },
    area,
    choke: rigging.cylinders * chokeArea(passage),
    assumed: [
      ...(stated ? [] : ['cylinderVolume']),
      ...(rigging.chokeDiameter === undefined ? ['chokeDiameter'] : []),
      ...(rigging.springForce === undefined ? ['springForce'] : []),
    ],
  };
}

export interface PipeParts {
  readonly volume: number;
  readonly diameter: number;
  readonly assumed: readonly string[];
}

const riggingsOf = (vehicle: Vehicle): BrakeRigging[] =>
  vehicle.brakes.flatMap((b) => (b.rigging ? [b.rigging] : []));

/** Bore of a vehicle's own pipe, if stated. */
export const hoseOf = (vehicle: Vehicle): number | undefined =>
  riggingsOf(vehicle).find((r) => r.hoseDiameter !== undefined)?.hoseDiameter ??
  vehicle.brakeSupply?.valveDiameter;

/** @param otherwise bore of the train's other hoses, for a vehicle that only passes the pipe on */
export function pipeParts(vehicle: Vehicle, otherwise: number): PipeParts {
  const own = hoseOf(vehicle);
  const diameter = own ?? otherwise;
  const stated = riggingsOf(vehicle).find((r) => r.pipeVolume !== undefined)?.pipeVolume;
  return {
    volume: stated ?? disc(diameter) * vehicle.length,
    diameter,
    assumed: [
      ...(own === undefined ? ['hoseDiameter'] : []),
      ...(stated === undefined ? ['pipeVolume'] : []),
    ],
  };
}

/** C·A of the driver's valve, m²; no narrower than the hose where not stated. */
export const valveArea = (supply: BrakeSupply | undefined, hose: number): number =>
  chokeArea(supply?.valveDiameter ?? hose);

/** The owner has begun to describe how the brake fills: what is still missing is then worth asking for. */
export function describesFilling(gear: BrakeGear): boolean {
  const r = gear.rigging;
  return (
    r !== undefined &&
    [r.reservoirVolume, r.pipeVolume, r.hoseDiameter, r.chokeDiameter, r.chamberVolume].some(
      (part) => part !== undefined,
    )
  );
}
