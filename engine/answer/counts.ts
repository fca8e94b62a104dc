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
import { holdingForce, standPull } from '../questions/hold/hold.ts';
import { availableAlong } from '../questions/speed/available.ts';
import { hostCeilings, runningSpeed } from '../questions/speed/ceilings.ts';
import { type RailState, railStates } from '../things/rail.ts';
import { isCar } from '../things/train/cars.ts';
import type { Rider } from '../things/train/types.ts';
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
  const riders: Rider[] = outing.riders.filter(
    (r) => r.vehicle === undefined || vehicles.some((v) => v.id === r.vehicle),
  );
  for (let i = cars.length; i < n; i++) {
    const id = `${pattern.id}+${i}`;
    vehicles.push({ ...pattern, id });
    for (const rider of outing.riders) {
      if (rider.vehicle === pattern.id) riders.push({ ...rider, id: `${rider.id}+${i}`, vehicle: id });
    }
  }
  return { ...outing, riders, train: { ...outing.train, vehicles } };
}

interface CountCheck {
  readonly pulled: (state: RailState) => number | undefined | 'unknown';
  readonly stopped: (state: RailState) => number | undefined | 'unknown';
  readonly held: (state: RailState) => number | undefined;
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
    held: (state) => {
      const hold = holdingForce(
        loaded,
        outing.assumed,
        outing.assumed.adhesion[state],
        air,
        (gear) => gear.parking,
        -1,
      );
      return hold >= stand().pull ? undefined : stand().at;
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

/** First place where the cautious stop from running speed does not fit, m; undefined: it fits everywhere. */
function failsToStop(context: OutingContext, model: ReturnType<typeof modelOf>): number | undefined {
  const { line, outing } = context;
  const count = Math.floor(line.length / STEP) + 1;
  const grid = Float64Array.from({ length: count }, (_, j) => j * STEP);
  // The end of the line slows every train; it is not what limits the count.
  const available = availableAlong(line, grid, stopMargin(context), false).distance;
  const speed = runningSpeed(context, grid, hostCeilings(context, grid));
  const gap = outing.host.leastGap ? outing.host.leastGap.value - stopMargin(context) : Infinity;
  for (let j = 0; j < count; j++) {
    const room = Math.min(gap, available[j]);
    const d = stopDistance(model, grid[j], speed[j]);
    if (d > room || d === Infinity) return grid[j];
  }
  return undefined;
}

type Way = 'pulled' | 'stopped' | 'held';
const ways: readonly Way[] = ['pulled', 'stopped', 'held'];

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
        const fails = check[way](state);
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
  const limited = (['pulled', 'stopped', 'held', 'host'] as const).filter((k) => all[k] !== null);
  const unknown = ways.some((way) => all[way] === null);
  const by = limited.reduce<(typeof limited)[number] | null>(
    (least, k) => (least === null || (all[k] as number) < (all[least] as number) ? k : least),
    null,
  );
  return {
    railState,
    ...all,
    least: by === null || unknown ? null : all[by],
    by: unknown ? null : by,
    failsAt: Object.fromEntries(ways.flatMap((w) => (where(w) === undefined ? [] : [[w, where(w)]]))),
    unlimited: ways.filter((way) => count(way) === undefined),
  };
}
