/**
 * What a chain must bear once its coupler has opened: the tail's weight on the grade, and the snatch.
 *
 * The chain counts as loaded by heavy riders, rolling resistance helps nowhere, and the engine goes on
 * pulling as hard as adhesion and machine allow, or the tail's own brakes are full on at once.
 */

import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import { whenSupplyIsLost } from '../../things/brake/reserve.ts';
import { reducedMass } from '../../things/chain/formulas.ts';
import { buildPotential } from '../../things/line/potential.ts';
import type { Line } from '../../things/line/types.ts';
import { adhesionLimit, type EngineHeights, machinePull } from '../../things/traction/pull.ts';
import type { LoadedTrain, LoadedVehicle } from '../../things/train/loaded.ts';
import { brakeForces } from '../balance/pull.ts';

const STEP = 1;

/** Force of the grade on each vehicle, N, positive: holds it back. `[vehicle][place of the head, every m]` */
export type Slopes = readonly Float64Array[];

export const slopesOf = (line: Line, { vehicles }: LoadedTrain): Slopes =>
  vehicles.map(
    ({ vehicle, behind, massHigh }) =>
      buildPotential(line, [{ behind, length: vehicle.length, mass: massHigh }], 0, line.length, STEP, 0)
        .slope,
  );

export interface GapLoad {
  /** Weight of the tail along the steepest grade, N, and the head's chainage there. */
  readonly steady: number;
  readonly steadyAt: number;
  /** Force that draws head and tail apart once the coupler is open, N, at its greatest. */
  readonly parting: number;
  readonly partingAt: number;
  readonly way: 'pulling' | 'tail braked';
  /** Greatest pull of steady running in the coupler, N; it draws them apart when nothing is done. */
  readonly running: number;
  /** Reduced mass of head and tail, kg, and both, with the inertia of their wheels. */
  readonly mass: number;
  readonly head: number;
  readonly tail: number;
  /** People on seats among these, kg. */
  readonly headRiders: number;
  readonly tailRiders: number;
}

const heavy = ({ massHigh, vehicle }: LoadedVehicle): number =>
  massHigh + vehicle.tare.high * vehicle.rotatingShare.high;

const rolling = ({ massHigh, vehicle }: LoadedVehicle): number =>
  massHigh * GRAVITY * pick(vehicle.resistance.rolling, 1);

const seated = ({ riders }: LoadedVehicle): number =>
  riders.reduce((sum, { rider }) => sum + rider.mass.high, 0);

const engineMass = (v: LoadedVehicle): number => (v.vehicle.traction ? v.massHigh : 0);

/** Pull of one engine at starting, N, at most; where the machine is not known, what adhesion allows. */
export function mostPull(engine: LoadedVehicle, adhesion: Quantity, heights: EngineHeights): number {
  const { traction } = engine.vehicle;
  if (!traction) return 0;
  return Math.min(
    machinePull(traction, 0, 1) ?? Infinity,
    adhesionLimit(engine, adhesion.high, 0, heights, 1),
  );
}

/** Loads of every gap, front first. */
export function gapLoads(
  line: Line,
  loaded: LoadedTrain,
  brakes: readonly BrakedGroup[],
  adhesion: Quantity,
  heights: EngineHeights,
): GapLoad[] {
  const { vehicles } = loaded;
  const slopes = slopesOf(line, loaded);
  const alone = brakeForces(vehicles.length, brakes, adhesion.high, 1, brakesAlone);
  const sum = (of: (v: LoadedVehicle) => number, from: number, to: number): number =>
    vehicles.slice(from, to).reduce((total, v) => total + of(v), 0);
  const all = totals(slopes);
  const allDrag = sum(rolling, 0, vehicles.length);
  const engines = sum(engineMass, 0, vehicles.length);
  const behind = new Float64Array(all.length);
  const gaps: GapLoad[] = [];
  for (let gap = vehicles.length - 2; gap >= 0; gap--) {
    addTo(behind, slopes[gap + 1]);
    const [head, tail] = [sum(heavy, 0, gap + 1), sum(heavy, gap + 1, vehicles.length)];
    const pull = sum((v) => mostPull(v, adhesion, heights), 0, gap + 1);
    const drag = sum(rolling, gap + 1, vehicles.length);
    const ownBrakes = alone.slice(gap + 1).reduce((a, b) => a + b, 0);
    const mass = reducedMass(head, tail);
    // Engines behind the gap push their share, by weight.
    const pushed = engines > 0 ? sum(engineMass, gap + 1, vehicles.length) / engines : 0;
    const best = { steady: 0, steadyAt: 0, grade: -Infinity, partingAt: 0, running: 0 };
    for (let j = 0; j < behind.length; j++) {
      const apart = behind[j] / tail - (all[j] - behind[j]) / head;
      if (apart > best.grade) [best.grade, best.partingAt] = [apart, j * STEP];
      best.running = Math.max(best.running, behind[j] + drag - pushed * (all[j] + allDrag));
      if (Math.abs(behind[j]) > best.steady) [best.steady, best.steadyAt] = [Math.abs(behind[j]), j * STEP];
    }
    const pulling = mass * (pull / head + drag / tail + best.grade);
    const braked = mass * ((ownBrakes + drag) / tail + best.grade);
    const parting = Math.max(0, pulling, braked);
    gaps.unshift({
      steady: best.steady,
      steadyAt: best.steadyAt,
      running: Math.min(best.running, parting),
      parting,
      partingAt: best.partingAt,
      way: braked > pulling ? 'tail braked' : 'pulling',
      mass,
      head,
      tail,
      headRiders: sum(seated, 0, gap + 1),
      tailRiders: sum(seated, gap + 1, vehicles.length),
    });
  }
  return gaps;
}

/** Kinds that come on by themselves when the hose or cable tears. */
export const brakesAlone = ({ gear }: Pick<BrakedGroup, 'gear'>): boolean =>
  whenSupplyIsLost(gear).parted === 'applies';

function totals(slopes: Slopes): Float64Array {
  const all = new Float64Array(slopes[0].length);
  for (const slope of slopes) addTo(all, slope);
  return all;
}

function addTo(sum: Float64Array, more: Float64Array): void {
  for (let j = 0; j < sum.length; j++) sum[j] += more[j];
}
