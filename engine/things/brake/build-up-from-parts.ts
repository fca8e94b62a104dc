/**
 * Dead time and build-up of each gear from how it fills, for the stop to use instead of an assumed ramp.
 *
 * The curve is replaced by the straight ramp through its 10 % and 90 % points. Spread: chokes between sharp
 * (0.61) and rounded (0.85), air between isothermal (late) and adiabatic (γ times earlier), and a further
 * spread where a volume was taken by rule. The air's times leave out handle, valve and slack in the
 * rigging: these are added to the dead time.
 */

import { AIR_GAMMA } from '../../base/constants.ts';
import { between, type Quantity } from '../../base/quantity.ts';
import type { AssumedValues, BrakePartValues } from '../assumed.ts';
import type { LoadedTrain } from '../train/loaded.ts';
import type { Train } from '../train/types.ts';
import type { BrakeGear } from '../vehicle/types.ts';
import { fillTrain, type GearFill } from './fill.ts';
import { lagTime } from './hand-and-push.ts';
import { airKinds } from './kinds/index.ts';
import { CHOKE_COEFFICIENT } from './parts.ts';
import { pushedBrakes } from './run-in.ts';

export interface GearBuildUp {
  readonly vehicle: number;
  readonly gear: BrakeGear;
  readonly deadTime: Quantity;
  readonly buildUp: Quantity;
  /** Force that the parts give ÷ force at the stated working pressure, never above 1: a reservoir or chamber
   * that is too small leaves less. */
  readonly forceShare: number;
}

/** Ramp through the 10 % and 90 % points: it starts an eighth of their distance earlier. */
export function rampOf({ t10, t90 }: { readonly t10: number; readonly t90: number }): {
  readonly dead: number;
  readonly build: number;
} {
  const build = (t90 - t10) / 0.8;
  return { dead: Math.max(0, t10 - build / 10), build };
}

const EARLIEST = CHOKE_COEFFICIENT / 0.85 / AIR_GAMMA;
const LATEST = CHOKE_COEFFICIENT / 0.61;
const SOURCE = 'filling of the brake from its parts';

function timed(seconds: number, byRule: Quantity | undefined): Quantity {
  const low = EARLIEST * (byRule ? byRule.low : 1);
  const high = LATEST * (byRule ? byRule.high : 1);
  return between(seconds * low, seconds, seconds * high, byRule ? 'assumed' : 'stated', SOURCE);
}

function later(q: Quantity, { low, value, high }: Quantity): Quantity {
  return { ...q, low: q.low + low, value: q.value + value, high: q.high + high };
}

/** Gears whose own times are not stated and whose parts are known. @param atmosphere Pa at the line */
export function riggingBuildUp(
  loaded: LoadedTrain,
  atmosphere: number,
  values: BrakePartValues,
): GearBuildUp[] {
  const fills = airKinds.flatMap((kind) =>
    loaded.train.vehicles.some((v) => v.brakes.some((b) => b.kind === kind && untimed(b)))
      ? fillTrain(loaded, kind, 'apply', atmosphere, values).gears
      : [],
  );
  return [
    ...fills.filter((f) => untimed(f.gear)).flatMap((f) => fromFill(f, values)),
    ...electric(loaded, values),
  ];
}

/**
 * The train with what its parts tell written into its gears, for the stop to reckon with: times, the share of
 * the force, and the force of surge brakes. Gears whose parts are not known stay as they are.
 */
export function timedTrain(
  loaded: LoadedTrain,
  assumed: AssumedValues,
  air: Air,
  times: readonly GearBuildUp[] = riggingBuildUp(loaded, air.pressure, assumed.brakeParts),
): Train {
  const { train } = loaded;
  const pushed = pushedBrakes(loaded, assumed, air);
  if (times.length === 0 && pushed.length === 0) return train;
  const timed = (gear: BrakeGear, vehicle: number): BrakeGear => {
    const push = pushed.find((p) => p.vehicle === vehicle && p.gear === gear);
    if (push)
      return { ...gear, force: push.force, pushed: true, ...(gear.force ? { pushedMost: gear.force } : {}) };
    const found = times.find((t) => t.vehicle === vehicle && t.gear.id === gear.id);
    if (!found) return gear;
    const { deadTime, buildUp, forceShare } = found;
    return { ...gear, deadTime, buildUp, ...(forceShare < 1 ? { forceShare } : {}) };
  };
  return {
    ...train,
    vehicles: train.vehicles.map((v, i) => ({ ...v, brakes: v.brakes.map((gear) => timed(gear, i)) })),
  };
}

interface Air {
  /** Pa at the line, and at sea level. */
  readonly pressure: number;
  readonly seaLevel: number;
}

const untimed = (gear: BrakeGear): boolean => gear.buildUp === undefined || gear.deadTime === undefined;

function fromFill(fill: GearFill, values: BrakePartValues): GearBuildUp[] {
  if (!Number.isFinite(fill.t90)) return [];
  const { dead, build } = rampOf(fill);
  const byRule = fill.assumed.length > 0 ? values.byRule : undefined;
  const { vehicle, gear } = fill;
  return [
    {
      vehicle,
      gear,
      deadTime: gear.deadTime ?? later(timed(dead, byRule), values.mechanical),
      buildUp: gear.buildUp ?? timed(build, byRule),
      forceShare: Math.min(1, fill.ofWorking),
    },
  ];
}

function electric(loaded: LoadedTrain, { electricDead }: BrakePartValues): GearBuildUp[] {
  return loaded.train.vehicles.flatMap((v, vehicle) =>
    v.brakes.flatMap((gear): GearBuildUp[] => {
      const { lag } = gear;
      if (gear.kind !== 'electric' || !lag || !untimed(gear)) return [];
      const rise = (lagTime(1, 0.9) - lagTime(1, 0.1)) / 0.8;
      const buildUp = between(lag.low * rise, lag.value * rise, lag.high * rise, lag.how, lag.source);
      return [
        {
          vehicle,
          gear,
          deadTime: gear.deadTime ?? electricDead,
          buildUp: gear.buildUp ?? buildUp,
          forceShare: 1,
        },
      ];
    }),
  );
}
