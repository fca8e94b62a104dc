/**
 * Pull at the rail: by cylinders or by a measured curve, never more than adhesion on the driven weight.
 *
 *   steam   F = f·P·d²·s·n/(2·D)   up to the speed where F·v reaches the boiler's power
 *
 * f mean ÷ boiler pressure, P boiler pressure (Pa), d bore, s stroke, D driver diameter (m), n cylinders.
 */
import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { AssumedValues } from '../assumed.ts';
import type { LoadedTrain, LoadedVehicle } from '../train/loaded.ts';
import type { DrawbarTraction, SteamTraction, Traction, Vehicle } from '../vehicle/types.ts';

/**
 * Pull of the machine alone, N; undefined at speed where the boiler's power is not known, and beyond the last speed at
 * which a pull was measured, unless it pulled nothing there.
 */
export function machinePull(traction: Traction, speed: number, position: number): number | undefined {
  return traction.kind === 'steam' ? steamPull(traction, speed, position) : curvePull(traction, speed);
}

function steamPull(t: SteamTraction, speed: number, position: number): number | undefined {
  const cylinders =
    (pick(t.meanPressureFactor, position) * t.boilerPressure * t.bore * t.bore * t.stroke * t.cylinders) /
    (2 * t.wheelDiameter);
  if (speed <= 0) return cylinders;
  return t.power ? Math.min(cylinders, pick(t.power, position) / speed) : undefined;
}

function curvePull({ curve }: DrawbarTraction, speed: number): number | undefined {
  if (speed <= curve[0].speed) return curve[0].force;
  for (let i = 1; i < curve.length; i++) {
    if (speed > curve[i].speed) continue;
    const share = (speed - curve[i - 1].speed) / (curve[i].speed - curve[i - 1].speed);
    return curve[i - 1].force + share * (curve[i].force - curve[i - 1].force);
  }
  return curve[curve.length - 1].force > 0 ? undefined : 0;
}

/**
 * Adhesion limit of one engine while it pulls on a grade, N.
 *
 *   N = (N₀ + m·g·i·h/L)/(1 − µ·c/L)   driven wheels behind the others;   signs change where they are in front
 *
 * N₀ static load on the driven groups (N), i grade, h centre height (m), c coupler height (m), L distance of
 * the groups (m): the pull at the coupler and the grade press the rear down and lift the front. Engines with
 * all wheels driven keep their whole weight; driven wheels never bear more than it, for then the others are in the air.
 *
 * @param heights what stands in for heights that nobody measured
 * @param side −1: every height where it leaves the least pull in its bounds; 1: the most; 0: likely
 */
export function adhesionLimit(
  engine: LoadedVehicle,
  adhesion: number,
  grade: number,
  heights: EngineHeights,
  side: number,
): number {
  const { vehicle, groupLoads, mass } = engine;
  const driven = vehicle.groups.flatMap((g, i) => (g.driven ? [i] : []));
  const load = driven.reduce((sum, i) => sum + groupLoads[i], 0);
  const others = vehicle.groups.filter((g) => !g.driven);
  if (driven.length === 0 || others.length === 0) return adhesion * load;
  const mean = (list: readonly { at: number }[]): number =>
    list.reduce((sum, g) => sum + g.at, 0) / list.length;
  const apart = mean(driven.map((i) => vehicle.groups[i])) - mean(others);
  const toward = side * Math.sign(apart);
  const centre = vehicle.centreHeight
    ? pick(vehicle.centreHeight, toward * Math.sign(grade))
    : vehicle.gauge * pick(heights.centre, toward * Math.sign(grade));
  const coupler = vehicle.rear.height ?? vehicle.gauge * pick(heights.coupler, toward);
  const moved = load + (mass * GRAVITY * grade * centre) / apart;
  const lifted = 1 - (adhesion * coupler) / apart;
  const whole = mass * GRAVITY;
  return adhesion * (lifted > 0 ? Math.min(whole, Math.max(0, moved / lifted)) : whole);
}

export type EngineHeights = AssumedValues['engineHeight'];

/** Heights that the pull of an engine hangs on and that nobody measured. */
export function heightsUnstated({ groups, traction, centreHeight, rear }: Vehicle): (keyof EngineHeights)[] {
  const moves = traction && groups.some((g) => g.driven) && groups.some((g) => !g.driven);
  if (!moves) return [];
  return [
    ...(centreHeight ? [] : ['centre' as const]),
    ...(rear.height === undefined ? ['coupler' as const] : []),
  ];
}

export interface PullAsk {
  /** m/s */
  readonly speed: number;
  readonly adhesion: Quantity;
  /** Rise over run, uphill positive. */
  readonly grade: number;
  /** Of machine and adhesion between their bounds; of the heights: −1 leaves the least pull, 1 the most. */
  readonly position: number;
  readonly side?: number;
}

/** Pull of all engines, N; undefined where an engine's pull is not known. */
export function trainPull(
  loaded: LoadedTrain,
  { speed, adhesion, grade, position, side = position }: PullAsk,
  heights: EngineHeights,
): number | undefined {
  const engines = loaded.vehicles.filter((v) => v.vehicle.traction);
  if (engines.length === 0) return undefined;
  let total = 0;
  for (const engine of engines) {
    const machine = machinePull(engine.vehicle.traction as Traction, speed, position);
    if (machine === undefined) return undefined;
    total += Math.min(machine, adhesionLimit(engine, pick(adhesion, position), grade, heights, side));
  }
  return total;
}
