/**
 * Brake design the other way round: the train must stop within a distance; which cylinder, lever ratio and
 * number of braked cars do it? Each proposal is proved by stopping the train with it again, and it is the
 * cautious stop (the same figure as in the answer) that must fit.
 *
 *   i = F/(φ·η·n·(A·p − S))     first guess of the lever ratio, then raised until the proof holds
 *
 * F retarding force per car (N), found by stopping; φ likely block friction, the lowest down to rest; η
 * efficiency; n cylinders per car; A piston area (m²); p working pressure or vacuum (Pa); S spring (N).
 */

import { exact, type Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import { prepare } from '../../motion/prepare.ts';
import { RAIL_VARIES } from '../../motion/slide.ts';
import { stopDistance } from '../../motion/stop.ts';
import type { OutingContext } from '../../outing/open.ts';
import { openOuting } from '../../outing/open.ts';
import type { Outing } from '../../outing/types.ts';
import { frictionAt } from '../../things/brake/force.ts';
import { brakedOnSand } from '../../things/rail.ts';
import { isCar } from '../../things/train/cars.ts';
import { groupLoads } from '../../things/train/loaded.ts';
import { tareAlong } from '../../things/vehicle/tare.ts';
import type { BlockMaterial, BrakeGear, BrakeRigging, Vehicle } from '../../things/vehicle/types.ts';

export interface DesignRequest {
  /** m, m/s, rise over run (negative falls). */
  readonly distance: number;
  readonly speed: number;
  readonly grade: number;
  /** Working pressure or vacuum in the cylinders, Pa. */
  readonly pressure: Quantity;
  readonly efficiency: Quantity;
  readonly block: BlockMaterial;
  readonly springForce: number;
  readonly cylindersPerCar: number;
  readonly deadTime: Quantity;
  readonly buildUp: Quantity;
  /** From the decision; zero where the distance counts from the handle. */
  readonly reaction: Quantity;
  /** Whether what the engine and tender have helps. */
  readonly withEngine: boolean;
  /** Look at brakes on all cars alone; absent: on the first one, two and so on too. */
  readonly everyCar?: boolean;
  /** Bores to choose from, m, growing; the usual ones where left out. */
  readonly bores?: readonly number[];
}

/** Bores of pneumatic cylinders sold everywhere, m (ISO 6432 and ISO 15552 series, from memory). */
export const usualBores: readonly number[] = [16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160].map(
  (mm) => mm / 1000,
);

/** Lever ratios are told in these steps. */
const LEVER_STEP = 0.25;
/** Stops drawn to set the cautious scenario: fewer while searching the force, as many as in the answer for the proof. */
const SEARCH_SAMPLES = 300;
const PROOF_SAMPLES = 1000;

export type DesignLimit =
  | 'lever-out-of-reach'
  | 'spring-not-overcome'
  | 'too-long'
  | 'slides-loaded'
  | 'slides-empty';

export interface BrakeDesign {
  readonly brakedCars: number;
  readonly bore: number;
  readonly leverRatio: number;
  /** Likely retarding force per braked car at walking pace, N. */
  readonly force: number;
  /** That force ÷ weight on the braked wheels of the lightest car: at and below this adhesion it slides. */
  readonly loadedRatio: number;
  readonly emptyRatio: number;
  /** Proved by stopping again, m. */
  readonly likelyStop: number;
  readonly cautiousStop: number;
  /** 1 − cautious stop ÷ distance. */
  readonly margin: number;
  /** What stands against it; only `slides-empty` leaves it feasible. */
  readonly limits: readonly DesignLimit[];
  readonly feasible: boolean;
}

export interface DesignResult {
  /** Force needed per braked car by their number, N; null: no force does it, the rail gives no more. */
  readonly needed: readonly { readonly brakedCars: number; readonly force: number | null }[];
  readonly designs: readonly BrakeDesign[];
  /** Adhesion at its low bound, today. */
  readonly adhesion: number;
}

/** @throws RangeError when distance or speed is not above zero */
export function designBrakes(context: OutingContext, request: DesignRequest): DesignResult {
  if (!(request.distance > 0 && request.speed > 0))
    throw new RangeError('distance and speed must be above zero');
  const cars = context.outing.train.vehicles.filter(isCar).length;
  const adhesion = pick(brakedOnSand(context.outing.assumed, context.outing.conditions.railState), -1);
  const needed: { brakedCars: number; force: number | null }[] = [];
  const designs: BrakeDesign[] = [];
  for (let braked = request.everyCar ? Math.max(1, cars) : 1; braked <= cars; braked++) {
    const force = neededForce(context, request, braked, adhesion);
    needed.push({ brakedCars: braked, force });
    if (force === null) continue;
    for (const bore of request.bores ?? usualBores)
      designs.push(proved(context, request, braked, bore, force, adhesion));
  }
  return { needed, designs, adhesion };
}

/** Cautious stop with all cars braked as hard as the rail bears, m; Infinity: it does not stop. */
export function leastStop(context: OutingContext, request: DesignRequest): number {
  const cars = context.outing.train.vehicles.filter(isCar).length;
  const adhesion = pick(brakedOnSand(context.outing.assumed, context.outing.conditions.railState), -1);
  return cars === 0 ? Infinity : hardest(context, request, cars, adhesion).cautious;
}

/** Beyond this share of what the rail holds, easing takes more away than braking harder adds. */
const mostForce = (context: OutingContext, braked: number, adhesion: number): number =>
  (1 - RAIL_VARIES / 2) * adhesion * lightest(context, braked).loaded;

const hardest = (context: OutingContext, request: DesignRequest, braked: number, adhesion: number) =>
  stops(
    trial(context, request, braked, steady(request, mostForce(context, braked, adhesion))),
    request,
    SEARCH_SAMPLES,
  );

/** Least force per braked car whose cautious stop fits; found by stopping. */
function neededForce(
  context: OutingContext,
  request: DesignRequest,
  braked: number,
  adhesion: number,
): number | null {
  const most = mostForce(context, braked, adhesion);
  const stop = (force: number): number =>
    stops(trial(context, request, braked, steady(request, force)), request, SEARCH_SAMPLES).cautious;
  if (hardest(context, request, braked, adhesion).cautious > request.distance) return null;
  let [low, high] = [0, most];
  while (high - low > 0.005 * most) {
    const middle = (low + high) / 2;
    if (stop(middle) > request.distance) low = middle;
    else high = middle;
  }
  return high;
}

/** A force that speed does not change, as composition's does not. */
const steady = (request: DesignRequest, force: number): Pick<BrakeGear, 'force' | 'rigging'> => ({
  force: exact(force),
  rigging: { ...riggingOf(request, usualBores[0], 1), block: 'composition' },
});

/** Weight on the wheels of the lightest braked car, loaded and empty, N. */
function lightest(context: OutingContext, braked: number): { loaded: number; empty: number } {
  const cars = context.loaded.vehicles.filter((v) => isCar(v.vehicle)).slice(0, braked);
  const sum = (loads: readonly number[]): number => Math.min(...loads) * loads.length;
  return {
    loaded: Math.min(...cars.map((c) => sum(c.groupLoads))),
    empty: Math.min(...cars.map(({ vehicle: v }) => sum(groupLoads(v, v.tare.value, tareAlong(v), [])))),
  };
}

function proved(
  context: OutingContext,
  request: DesignRequest,
  braked: number,
  bore: number,
  needed: number,
  adhesion: number,
): BrakeDesign {
  const { 'lever-least': least, 'lever-most': most } = context.outing.assumed.practice;
  const perLever = likelyForcePerLever(context, request, bore);
  const rounded = (i: number): number => Math.max(least.value, Math.ceil(i / LEVER_STEP - 1e-9) * LEVER_STEP);
  const { loaded, empty } = lightest(context, braked);
  let leverRatio = perLever > 0 ? rounded(needed / perLever) : Infinity;
  let stop = { likely: Infinity, cautious: Infinity };
  // Spread of blocks and pressure asks for more than the first guess; sliding ends the search.
  while (leverRatio <= most.value) {
    const how = { rigging: riggingOf(request, bore, leverRatio) };
    stop = stops(trial(context, request, braked, how), request, PROOF_SAMPLES);
    if (stop.cautious <= request.distance || (perLever * leverRatio) / loaded > adhesion) break;
    leverRatio = rounded(Math.max(leverRatio * 1.04, leverRatio + LEVER_STEP));
  }
  const force = leverRatio <= most.value ? perLever * leverRatio : 0;
  const limits: DesignLimit[] = [];
  if (perLever <= 0) limits.push('spring-not-overcome');
  else if (leverRatio > most.value) limits.push('lever-out-of-reach');
  else if (stop.cautious > request.distance) limits.push('too-long');
  if (force / loaded > adhesion) limits.push('slides-loaded');
  if (force / empty > adhesion) limits.push('slides-empty');
  return {
    brakedCars: braked,
    bore,
    leverRatio,
    force,
    loadedRatio: force / loaded,
    emptyRatio: force / empty,
    likelyStop: stop.likely,
    cautiousStop: stop.cautious,
    margin: 1 - stop.cautious / request.distance,
    limits,
    feasible: limits.every((l) => l === 'slides-empty'),
  };
}

/** Likely retarding force of a car per unit of lever ratio, N, with the friction lowest between rest and the speed. */
function likelyForcePerLever({ outing }: OutingContext, request: DesignRequest, bore: number): number {
  const { pressure, efficiency, springForce, cylindersPerCar, block, speed } = request;
  const points = outing.assumed.blockFriction[block];
  const speeds = [0, speed, ...points.map((p) => p.speed).filter((v) => v < speed)];
  const friction = Math.min(...speeds.map((v) => frictionAt(points, v, 0)));
  const push = (Math.PI / 4) * bore * bore * pressure.value - springForce;
  return Math.max(0, push) * cylindersPerCar * efficiency.value * friction;
}

const riggingOf = (request: DesignRequest, bore: number, leverRatio: number): BrakeRigging => ({
  cylinders: request.cylindersPerCar,
  bore,
  leverRatio,
  efficiency: request.efficiency,
  block: request.block,
  workingPressure: request.pressure,
  springForce: request.springForce,
});

/** The outing with the first cars braked as proposed, on one constant grade. */
function trial(
  { outing }: OutingContext,
  request: DesignRequest,
  braked: number,
  how: Pick<BrakeGear, 'force' | 'rigging'>,
): Outing {
  let left = braked;
  const rebuilt = (vehicle: Vehicle): Vehicle => {
    if (!isCar(vehicle)) return request.withEngine ? vehicle : { ...vehicle, brakes: [] };
    if (left-- <= 0) return { ...vehicle, brakes: [] };
    const gear: BrakeGear = {
      id: 'proposed',
      name: 'proposed',
      kind: 'straight-air',
      on: vehicle.groups.map((g) => g.id),
      deadTime: request.deadTime,
      buildUp: request.buildUp,
      workedBy: 'driver',
      parking: false,
      ...how,
    };
    // Whatever works it will reach every car: that is what is designed.
    return { ...vehicle, brakes: [gear], supplies: ['straight-air'] };
  };
  const length = 8 * request.distance + 50;
  // A grade of its own: the stretches of today's line do not lie on it.
  const { railStretches: _today, ...conditions } = outing.conditions;
  const { railStretches: _usual, ...line } = outing.line;
  return {
    ...outing,
    direction: 'forward',
    plannedSpeed: request.speed,
    host: { name: outing.host.name },
    train: { ...outing.train, vehicles: outing.train.vehicles.map(rebuilt) },
    conditions: { ...conditions, reaction: request.reaction },
    line: {
      ...line,
      loop: false,
      length,
      heights: [
        { at: 0, height: 0 },
        { at: length, height: length * request.grade },
      ],
      curves: [],
      cants: [],
      places: [],
      speedLimits: [],
      sights: [],
    },
  };
}

function stops(
  outing: Outing,
  request: DesignRequest,
  samples: number,
): { readonly likely: number; readonly cautious: number } {
  const models = prepare(openOuting(outing), 1, samples).models(outing.conditions.railState);
  return {
    likely: stopDistance(models.likely, 0, request.speed),
    cautious: stopDistance(models.cautious, 0, request.speed),
  };
}
