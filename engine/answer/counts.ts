/**
 * How many cars: pulled, stopped, held, allowed by the host. Each is found by really raising the count and
 * asking the engine again, with the same cars and riders; cars beyond the train's own are copies of its last
 * car with its riders.
 */

import { modelOf } from '../motion/model.ts';
import { potentialOf, prepare } from '../motion/prepare.ts';
import type { Scenario } from '../motion/scenario.ts';
import { stopDistance } from '../motion/stop.ts';
import { type OutingContext, openOuting, stopMargin } from '../outing/open.ts';
import type { Outing } from '../outing/types.ts';
import { carefulStart, pullsAlong } from '../questions/haul/start.ts';
import { holdingForce, type ParkedHold, parkedHold, standPull } from '../questions/hold/hold.ts';
import { availableAlong } from '../questions/speed/available.ts';
import { hostCeilings, runningSpeed } from '../questions/speed/ceilings.ts';
import { fastestAllowed, holdsFall, leastBrake } from '../questions/speed/holds.ts';
import { type RailState, railStates } from '../things/rail.ts';
import { isCar } from '../things/train/cars.ts';
import type { Rider } from '../things/train/types.ts';
import type { Vehicle } from '../things/vehicle/types.ts';
import type { CarCount } from './types.ts';

/** The search ends here. */
export const MOST_CARS = 40;
/** Starts drawn for each count. */
const START_DRAWS = 100;
/** Grid of the counts, m. */
const STEP = 2;

/** The outing with exactly n cars. Undefined if the train has no car to copy. */
export function withCars(outing: Outing, n: number): Outing | undefined {
  const cars = outing.train.vehicles.filter(isCar);
  const pattern = cars[cars.length - 1];
  if (!pattern) return undefined;
  const kept = new Set(cars.slice(0, n).map((c) => c.id));
  const vehicles = outing.train.vehicles.filter((v) => !isCar(v) || kept.has(v.id));
  const riders = guardsAboard(outing, vehicles, cars[n - 1]);
  for (let i = cars.length; i < n; i++) {
    const id = `${pattern.id}+${i}`;
    vehicles.push({ ...pattern, id });
    for (const rider of outing.riders) {
      // A copied car has no driver or guard of its own.
      if (rider.vehicle === pattern.id)
        riders.push({ ...rider, id: `${rider.id}+${i}`, vehicle: id, duty: 'rider' });
    }
  }
  return { ...outing, riders, train: { ...outing.train, vehicles } };
}

/** Who rides on the vehicles kept. Where the guard's car stays behind, someone on the last car kept is guard. */
function guardsAboard(outing: Outing, kept: readonly Vehicle[], last: Vehicle | undefined): Rider[] {
  const stays = (r: Rider): boolean => r.vehicle === undefined || kept.some((v) => v.id === r.vehicle);
  const riders = outing.riders.filter(stays);
  if (!outing.riders.some((r) => r.duty === 'guard' && !stays(r))) return riders;
  const acts = riders.findLast((r) => r.vehicle === last?.id && r.duty === 'rider' && r.ageGroup === 'adult');
  return riders.map((r) => (r === acts ? { ...r, duty: 'guard' } : r));
}

interface CountCheck {
  readonly pulled: (state: RailState) => number | undefined | 'unknown';
  readonly stopped: (state: RailState) => number | undefined | 'unknown';
  readonly held: (state: RailState, by: keyof ParkedHold) => number | undefined;
}

/** For one count: per rail state, where each fails (m); undefined: it does not fail. */
function checkCount(context: OutingContext, cautionOf: (state: RailState) => Scenario): CountCheck {
  const { outing, line, loaded } = context;
  // Each is laid only while a count still asks for it: most trains can be held long after they cannot be pulled.
  const pulls = once(() => pullsAlong(context, STEP));
  const stand = once(() => standPull(loaded, potentialOf(line, loaded, 0, STEP, 0), line.length));
  const ready = once(() => prepare(context, STEP, 0));
  const { air } = context;
  return {
    pulled: (state) => {
      const start = carefulStart(context, pulls(), state, START_DRAWS);
      if (start.pull === undefined) return 'unknown';
      return start.pull >= start.need ? undefined : start.at;
    },
    stopped: (state) => {
      if (ready().brakes.faults.some((f) => f.why === 'force-unknown')) return 'unknown';
      const model = modelOf(ready().kit(state), cautionOf(state));
      return failsToStop(context, model);
    },
    held: (state, by) => {
      const holds = parkedHold(loaded, (counts) =>
        holdingForce(loaded, outing.assumed, outing.assumed.adhesion[state], air, counts, -1),
      );
      return holds[by] >= stand().pull ? undefined : stand().at;
    },
  };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** First place where the brake does not hold or the cautious stop from running speed does not fit, m; undefined: none. */
function failsToStop(context: OutingContext, model: ReturnType<typeof modelOf>): number | undefined {
  const { line, outing } = context;
  const count = Math.floor(line.length / STEP) + 1;
  const grid = Float64Array.from({ length: count }, (_, j) => j * STEP);
  // The end of the line slows every train; it is not what limits the count.
  const available = availableAlong(line, grid, stopMargin(context), outing.assumed.sight, false).distance;
  const ceilings = hostCeilings(context, grid);
  const speed = runningSpeed(context, grid, ceilings);
  const brake = leastBrake(model, fastestAllowed(ceilings, count));
  const gap = outing.host.leastGap ? outing.host.leastGap.value - stopMargin(context) : Infinity;
  for (let j = 0; j < count; j++) {
    const room = Math.min(gap, available[j]);
    const d = stopDistance(model, grid[j], speed[j]);
    if (d > room || d === Infinity || !holdsFall(model, brake, grid[j])) return grid[j];
  }
  return undefined;
}

type Way = 'pulled' | 'stopped' | 'held' | 'heldByDriver' | 'heldByAll';
/** By what driver and guard may be relied on for; nobody relies on riders. */
const deciding = ['pulled', 'stopped', 'held'] as const;
const ways: readonly Way[] = [...deciding, 'heldByDriver', 'heldByAll'];

const failsBy = (check: CountCheck, way: Way, state: RailState): number | undefined | 'unknown' => {
  switch (way) {
    case 'pulled':
    case 'stopped':
      return check[way](state);
    case 'held':
      return check.held(state, 'crew');
    case 'heldByDriver':
      return check.held(state, 'driver');
    case 'heldByAll':
      return check.held(state, 'everybody');
  }
};

/** Car counts for all rail states. @param cautionOf caution by rail state */
export function countCars(outing: Outing, cautionOf: (state: RailState) => Scenario): CarCount[] {
  if (!outing.train.vehicles.some(isCar)) return railStates.map((state) => nothingToCount(state, outing));
  const counts = new Map<string, number | null>();
  const failsAt = new Map<string, number>();
  const key = (state: RailState, way: Way): string => `${state} ${way}`;
  for (let n = 0; n <= MOST_CARS && counts.size < railStates.length * ways.length; n++) {
    const changed = withCars(outing, n);
    if (!changed || changed.train.vehicles.length === 0) break;
    const check = checkCount(openOuting(changed), cautionOf);
    for (const state of railStates) {
      for (const way of ways) {
        if (counts.has(key(state, way))) continue;
        const fails = failsBy(check, way, state);
        if (fails === undefined) continue;
        counts.set(key(state, way), fails === 'unknown' ? null : Math.max(0, n - 1));
        if (fails !== 'unknown') failsAt.set(key(state, way), fails);
      }
    }
  }
  const host = outing.host.mostCars?.value ?? null;
  return railStates.map((state) =>
    summarise(
      state,
      host,
      (way) => counts.get(key(state, way)),
      (way) => failsAt.get(key(state, way)),
    ),
  );
}

/** A train without a car has no car to count with. */
const nothingToCount = (railState: RailState, outing: Outing): CarCount => ({
  railState,
  pulled: null,
  stopped: null,
  held: null,
  heldByDriver: null,
  heldByAll: null,
  host: outing.host.mostCars?.value ?? null,
  least: null,
  by: null,
  failsAt: {},
  unlimited: [],
});

function summarise(
  railState: RailState,
  host: number | null,
  count: (way: Way) => number | null | undefined,
  where: (way: Way) => number | undefined,
): CarCount {
  const value = (way: Way): number | null => {
    const found = count(way);
    return found === undefined ? MOST_CARS : found;
  };
  const all = { pulled: value('pulled'), stopped: value('stopped'), held: value('held'), host };
  const both = { heldByDriver: value('heldByDriver'), heldByAll: value('heldByAll') };
  const limited = (['pulled', 'stopped', 'held', 'host'] as const).filter((k) => all[k] !== null);
  const unknown = deciding.some((way) => all[way] === null);
  const by = limited.reduce<(typeof limited)[number] | null>(
    (least, k) => (least === null || (all[k] as number) < (all[least] as number) ? k : least),
    null,
  );
  return {
    railState,
    ...all,
    ...both,
    least: by === null || unknown ? null : all[by],
    by: unknown ? null : by,
    failsAt: Object.fromEntries(deciding.flatMap((w) => (where(w) === undefined ? [] : [[w, where(w)]]))),
    unlimited: ways.filter((way) => count(way) === undefined),
  };
}
