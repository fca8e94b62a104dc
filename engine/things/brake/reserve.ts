/**
 * What is in store: applications that a reservoir holds, pressure left after leaking, and what each kind does
 * when the hose parts or the engine fails.
 */
import type { LoadedTrain } from '../train/loaded.ts';
import type { BrakeGear } from '../vehicle/types.ts';
import { afterApplications } from './equalise.ts';
import { type AirKind, airKinds, type BrakeKind, brakeOf, isByArm, keptIn } from './kinds/index.ts';
import type { SupplyLoss } from './kinds/kind.ts';
import { cylinderParts, hoseOf, pipeParts } from './parts.ts';
import type { Piston } from './piston.ts';
import { gearStates, suppliedKinds } from './system.ts';

/** Share of the stated working pressure from which an application counts as full, and as useful. */
const FULL = 0.95;
const USEFUL = 0.5;
/** Applications are counted no further than this. */
const MOST = 50;

export interface Reserve {
  readonly vehicle: number;
  /** The car's own gear, or absent for the engine's main reservoir. */
  readonly gear?: BrakeGear;
  readonly kind: BrakeKind;
  /** Full and useful applications without recharging; `MOST` means at least so many. */
  readonly full: number;
  readonly useful: number;
  /** Cylinder pressure above atmosphere after each application, Pa, the first ones. */
  readonly pressures: readonly number[];
  readonly working: number;
}

/** Reserves of the train that can be reckoned: main reservoir for straight air, car reservoirs for automatic. */
export function reserves(loaded: LoadedTrain, atmosphere: number): Reserve[] {
  const kept = (where: 'main reservoir' | 'car reservoir'): AirKind[] =>
    airKinds.filter((kind) => keptIn(kind) === where);
  return [
    ...kept('main reservoir').flatMap((kind) => mainReservoir(loaded, kind, atmosphere)),
    ...kept('car reservoir').flatMap((kind) => carReservoirs(loaded, kind, atmosphere)),
  ];
}

function mainReservoir(loaded: LoadedTrain, kind: AirKind, atmosphere: number): Reserve[] {
  const { train } = loaded;
  const engine = train.vehicles.findIndex((v) => suppliedKinds(v).includes(kind));
  const supply = train.vehicles[engine]?.brakeSupply;
  if (supply?.reservoirVolume === undefined || supply.pressure === undefined) return [];
  const filled = trainPiston(loaded, kind);
  if (!filled) return [];
  const { piston, working } = filled;
  const held = atmosphere + supply.pressure;
  // The driver's valve lets through no more than the working pressure: count the air, not the equal pressure.
  const dose = (atmosphere + working) * (piston.clearance + piston.swept) - atmosphere * piston.clearance;
  const pressures: number[] = [];
  let left = held;
  for (let i = 0; i < MOST; i++) {
    const after = left - dose / supply.reservoirVolume;
    if (after < atmosphere + working) {
      pressures.push(
        ...afterApplications(left, supply.reservoirVolume, piston, atmosphere, MOST - i).map(
          (p) => p - atmosphere,
        ),
      );
      break;
    }
    left = after;
    pressures.push(working);
  }
  return [{ vehicle: engine, kind, ...counted(pressures, working) }];
}

/** All that the main reservoir must fill at each application, as one piston: pipe, clearances and strokes. */
function trainPiston(loaded: LoadedTrain, kind: AirKind): { piston: Piston; working: number } | undefined {
  const { train } = loaded;
  const hose = train.vehicles.map(hoseOf).find((d) => d !== undefined);
  if (hose === undefined) return undefined;
  let [clearance, swept, strokeAt, working] = [0, 0, 0, 0];
  for (const vehicle of train.vehicles) clearance += pipeParts(vehicle, hose).volume;
  for (const { gear, answers } of gearStates(loaded)) {
    if (!answers || gear.kind !== kind || !gear.rigging) continue;
    const parts = cylinderParts(gear);
    if ('missing' in parts) return undefined;
    clearance += parts.piston.clearance;
    swept += parts.piston.swept;
    strokeAt = Math.max(strokeAt, parts.piston.strokeAt);
    working = Math.max(working, gear.rigging.workingPressure.value);
  }
  return swept > 0 ? { piston: { clearance, swept, strokeAt }, working } : undefined;
}

function carReservoirs(loaded: LoadedTrain, kind: AirKind, atmosphere: number): Reserve[] {
  const { train } = loaded;
  const engine = train.vehicles.find((v) => suppliedKinds(v).includes(kind));
  const charge = engine?.brakeSupply?.pressure;
  if (charge === undefined) return [];
  return train.vehicles.flatMap((v, vehicle) =>
    v.brakes.flatMap((gear): Reserve[] => {
      const volume = gear.rigging?.reservoirVolume;
      const parts = cylinderParts(gear);
      if (gear.kind !== kind || !gear.rigging || volume === undefined || 'missing' in parts) return [];
      const after = afterApplications(atmosphere + charge, volume, parts.piston, atmosphere, MOST);
      const working = gear.rigging.workingPressure.value;
      const pressures = after.map((p) => p - atmosphere);
      return [{ vehicle, gear, kind, ...counted(pressures, working) }];
    }),
  );
}

function counted(
  pressures: readonly number[],
  working: number,
): { full: number; useful: number; pressures: readonly number[]; working: number } {
  const until = (share: number): number => {
    const fails = pressures.findIndex((p) => p < share * working);
    return fails < 0 ? MOST : fails;
  };
  return { full: until(FULL), useful: until(USEFUL), pressures: pressures.slice(0, 10), working };
}

/**
 * A gear after standing for a time, its pressure or vacuum leaked down at the rate of the leak test.
 *
 * p = max(0, p₀ − ṗ·t): the straight line lies below the true, slowing leak, so standing times come out short
 * rather than long. A mechanical parking brake keeps its force. Absent: the leak was not measured.
 */
export function leakedGear(gear: BrakeGear, time: number): BrakeGear | undefined {
  if (gear.parking || isByArm(gear.kind)) return gear;
  const rigging = gear.rigging;
  const leak = rigging?.leakRate;
  if (!rigging || leak === undefined) return undefined;
  const p = rigging.workingPressure;
  const down = (x: number): number => Math.max(0, x - leak * time);
  if (gear.force) {
    const share = down(p.value) / p.value;
    const { value, low, high } = gear.force;
    return { ...gear, force: { ...gear.force, value: value * share, low: low * share, high: high * share } };
  }
  return {
    ...gear,
    rigging: {
      ...rigging,
      workingPressure: { ...p, value: down(p.value), low: down(p.low), high: down(p.high) },
    },
  };
}

/** What a gear does when it loses what works it. */
export const whenSupplyIsLost = (gear: BrakeGear): SupplyLoss => brakeOf(gear.kind).supplyLost(gear);
