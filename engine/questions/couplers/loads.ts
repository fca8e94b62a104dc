/**
 * What a chain must bear once its coupler has opened: the tail's weight on the grade, and what draws head and tail apart.
 *
 * Told by one draw in a hundred: each vehicle's masses and rolling resistance and its brakes' force are its own; what the
 * survey missed of the grade, adhesion, steam and friction of the blocks the train's. The steady load counts on no rolling
 * resistance; drawn apart, the engine goes on pulling as hard as adhesion and machine allow, or the tail's own brakes are
 * full on at once. Places are those where likely the most is asked.
 */

import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import { gradeSpread } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type BrakedGroup, frictionAt } from '../../things/brake/force.ts';
import { whenSupplyIsLost } from '../../things/brake/reserve.ts';
import { reducedMass } from '../../things/chain/formulas.ts';
import { buildPotential } from '../../things/line/potential.ts';
import { adhesionLimit, type EngineHeights, machinePull } from '../../things/traction/pull.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import { DRAWS, drawBeyond, drawsOf, positionsOf } from '../balance/draws.ts';
import { ODDS, passedBy } from './peaks.ts';

const STEP = 1;

/** All draws of what parts at a gap. */
export interface PartedDraws {
  /** Head and tail, kg, with the inertia of their wheels, and of it people on seats. */
  readonly head: Float64Array;
  readonly tail: Float64Array;
  readonly headRiders: Float64Array;
  readonly tailRiders: Float64Array;
  /** Force that draws them apart, N: when nothing is done, and at its greatest. */
  readonly running: Float64Array;
  readonly parting: Float64Array;
}

export interface GapLoad {
  /** Weight of the tail along the steepest grade, N, the tail that weighs so, kg, and the head's chainage there. */
  readonly steady: number;
  readonly steadyMass: number;
  readonly steadyAt: number;
  /** Force that draws head and tail apart once the coupler is open, N, at its greatest. */
  readonly parting: number;
  readonly partingAt: number;
  readonly way: 'pulling' | 'tail braked';
  /** Greatest pull of steady running in the coupler, N; it draws them apart when nothing is done. */
  readonly running: number;
}

/** All draws of one vehicle. */
interface VehicleDraws {
  /** kg; with the inertia of its wheels; people on seats */
  readonly mass: Float64Array;
  readonly heavy: Float64Array;
  readonly seated: Float64Array;
  /** N: rolling resistance, pull of an engine, brakes that come on by themselves */
  readonly drag: Float64Array;
  readonly pull: Float64Array;
  readonly alone: Float64Array;
  /** Force of the grade by place of the head, N for each kg, positive: holds it back. */
  readonly slope: Float64Array;
}

/** Loads of every gap, front first. */
export function gapLoads(
  context: OutingContext,
  brakes: readonly BrakedGroup[],
  adhesion: Quantity,
): { readonly load: GapLoad; readonly drawn: PartedDraws }[] {
  const { vehicles } = context.loaded;
  const drawn = vehicles.map((v) => drawVehicle(context, v, brakes, adhesion));
  const steeper = drawsOf(gradeSpread(context), 'grade').map((grade) => GRAVITY * grade);
  return vehicles.slice(1).map((_, gap) => gapLoad(vehicles, drawn, steeper, gap));
}

const zeros = (): Float64Array => new Float64Array(DRAWS);
const eachDraw = (of: (i: number) => number): Float64Array => zeros().map((_, i) => of(i));

function drawVehicle(
  { line, outing }: OutingContext,
  loaded: LoadedVehicle,
  brakes: readonly BrakedGroup[],
  adhesion: Quantity,
): VehicleDraws {
  const { vehicle, index: k, riders, behind } = loaded;
  const tare = drawsOf(vehicle.tare, `tare ${k}`);
  const [mass, seated] = [Float64Array.from(tare), zeros()];
  riders.forEach(({ rider }, r) => addTo(seated, drawsOf(rider.mass, `rider ${k} ${r}`)));
  addTo(mass, seated);
  vehicle.loads.forEach((load, l) => addTo(mass, drawsOf(load.mass, `load ${k} ${l}`)));
  const wheels = drawsOf(vehicle.rotatingShare, `wheels ${k}`);
  const rolling = drawsOf(vehicle.resistance.rolling, `resistance ${k}`);
  const grips = drawsOf(adhesion, 'adhesion');
  return {
    mass,
    heavy: eachDraw((i) => mass[i] + tare[i] * wheels[i]),
    seated,
    drag: eachDraw((i) => mass[i] * GRAVITY * rolling[i]),
    pull: pullDraws(loaded, grips, outing.assumed.engineHeight),
    alone: aloneDraws(brakes, k, grips),
    slope: buildPotential(line, [{ behind, length: vehicle.length, mass: 1 }], 0, line.length, STEP, 0).slope,
  };
}

/** Pull of one engine at starting, N; where the machine is not known, what adhesion allows. */
function pullDraws(engine: LoadedVehicle, grips: Float64Array, heights: EngineHeights): Float64Array {
  const { traction } = engine.vehicle;
  if (!traction) return zeros();
  const [steam, sides] = [positionsOf('steam'), positionsOf('engine heights')];
  return eachDraw((i) =>
    Math.min(
      machinePull(traction, 0, steam[i]) ?? Infinity,
      adhesionLimit(engine, grips[i], 0, heights, sides[i]),
    ),
  );
}

/** Kinds that come on by themselves when the hose or cable tears. */
export const brakesAlone = ({ gear }: Pick<BrakedGroup, 'gear'>): boolean =>
  whenSupplyIsLost(gear).parted === 'applies';

function aloneDraws(brakes: readonly BrakedGroup[], vehicle: number, grips: Float64Array): Float64Array {
  const sum = zeros();
  const [strong, rubs] = [positionsOf(`brake ${vehicle}`), positionsOf('friction')];
  for (const g of brakes) {
    if (g.vehicle !== vehicle || !brakesAlone(g)) continue;
    const rubbing = (i: number): number => (g.friction ? frictionAt(g.friction, 0, rubs[i]) : 1);
    addTo(
      sum,
      eachDraw((i) => Math.min(pick(g.block, strong[i]) * rubbing(i), grips[i] * g.load)),
    );
  }
  return sum;
}

function addTo(sum: Float64Array, more: Float64Array): void {
  for (let i = 0; i < sum.length; i++) sum[i] += more[i];
}

function gapLoad(
  vehicles: readonly LoadedVehicle[],
  all: readonly VehicleDraws[],
  steeper: Float64Array,
  gap: number,
): { readonly load: GapLoad; readonly drawn: PartedDraws } {
  const [ahead, behind] = [all.slice(0, gap + 1), all.slice(gap + 1)];
  const total = (of: (v: VehicleDraws) => Float64Array, on: readonly VehicleDraws[]): Float64Array => {
    const sum = zeros();
    for (const v of on) addTo(sum, of(v));
    return sum;
  };
  const onGrade = (on: readonly VehicleDraws[], at: number): Float64Array =>
    total(({ mass, slope }) => mass.map((m, i) => m * (slope[at] + steeper[i])), on);
  const head = total((v) => v.heavy, ahead);
  const tail = total((v) => v.heavy, behind);
  const pull = total((v) => v.pull, ahead);
  const [drag, allDrag] = [total((v) => v.drag, behind), total((v) => v.drag, all)];
  const own = total((v) => v.alone, behind);
  const pushed = pushedShare(vehicles, gap);
  const places = hardestPlaces(vehicles, all, gap, pushed);

  const steady = onGrade(behind, places.steady).map(Math.abs);
  const steadyDraw = drawBeyond(steady);
  const [runBehind, runAll] = [onGrade(behind, places.running), onGrade(all, places.running)];
  const [partBehind, partAhead] = [onGrade(behind, places.parting), onGrade(ahead, places.parting)];
  const apart = (force: (i: number) => number): Float64Array =>
    eachDraw(
      (i) => reducedMass(head[i], tail[i]) * (force(i) + partBehind[i] / tail[i] - partAhead[i] / head[i]),
    );
  const pulling = apart((i) => pull[i] / head[i] + drag[i] / tail[i]);
  const braked = apart((i) => (own[i] + drag[i]) / tail[i]);
  const parting = eachDraw((i) => Math.max(0, pulling[i], braked[i]));
  const running = eachDraw((i) =>
    Math.min(Math.max(0, runBehind[i] + drag[i] - pushed * (runAll[i] + allDrag[i])), parting[i]),
  );
  const partingDraw = drawBeyond(parting);
  return {
    load: {
      steady: told(steady),
      steadyMass: behind.reduce((sum, v) => sum + v.mass[steadyDraw], 0),
      steadyAt: places.steady * STEP,
      parting: told(parting),
      partingAt: places.parting * STEP,
      way: braked[partingDraw] > pulling[partingDraw] ? 'tail braked' : 'pulling',
      running: told(running),
    },
    drawn: {
      head,
      tail,
      headRiders: total((v) => v.seated, ahead),
      tailRiders: total((v) => v.seated, behind),
      running,
      parting,
    },
  };
}

/** Passed by one draw in a hundred, and no more than the greatest of all. */
const told = (loads: Float64Array): number => Math.min(passedBy(loads, ODDS), Math.max(...loads));

/** Engines behind the gap push their share, by weight. */
function pushedShare(vehicles: readonly LoadedVehicle[], gap: number): number {
  const engines = (on: readonly LoadedVehicle[]): number =>
    on.reduce((sum, v) => sum + (v.vehicle.traction ? v.mass : 0), 0);
  const all = engines(vehicles);
  return all > 0 ? engines(vehicles.slice(gap + 1)) / all : 0;
}

/** Nodes of the head where likely each of the loads is greatest. */
function hardestPlaces(
  vehicles: readonly LoadedVehicle[],
  all: readonly VehicleDraws[],
  gap: number,
  pushed: number,
): { readonly steady: number; readonly running: number; readonly parting: number } {
  const weigh = (from: number, to: number): number =>
    vehicles.slice(from, to).reduce((sum, v) => sum + v.effectiveMass, 0);
  const [head, tail] = [weigh(0, gap + 1), weigh(gap + 1, vehicles.length)];
  let best = { steady: 0, running: 0, parting: 0 };
  const most = { steady: -1, running: -Infinity, parting: -Infinity };
  for (let j = 0; j < all[0].slope.length; j++) {
    let [ahead, behind] = [0, 0];
    for (let k = 0; k <= gap; k++) ahead += vehicles[k].mass * all[k].slope[j];
    for (let k = gap + 1; k < all.length; k++) behind += vehicles[k].mass * all[k].slope[j];
    const here = {
      steady: Math.abs(behind),
      running: behind - pushed * (ahead + behind),
      parting: behind / tail - ahead / head,
    };
    for (const key of ['steady', 'running', 'parting'] as const) {
      if (here[key] <= most[key]) continue;
      most[key] = here[key];
      best = { ...best, [key]: j };
    }
  }
  return best;
}
