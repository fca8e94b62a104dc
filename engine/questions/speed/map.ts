/**
 * The speed map: permitted speed by place with its reason, the stop and the gap that go with it, and the
 * braking points for booked stops and lower limits.
 */

import { leastBrake } from '../../motion/held.ts';
import type { MapModels, StopModel } from '../../motion/model.ts';
import { slowingDistance, stopDistance } from '../../motion/stop.ts';
import { type OutingContext, stopMargin } from '../../outing/open.ts';
import type { RailState } from '../../things/rail.ts';
import { driverBehind } from '../../things/train/crew.ts';
import { gapNeeded } from '../gap/needed.ts';
import type { Ceiling } from '../question.ts';
import { availableAlong, seenBy } from './available.ts';
import { fastestAllowed, holdsFall } from './holds.ts';
import { limitsByStopping } from './limits.ts';
import type { BrakingPoint, SpeedMap, SpeedReason } from './types.ts';

/** Grid of head chainages over the line: steps of half a metre, coarser where a line is longer than 4 km. */
export function gridOf(length: number): Float64Array {
  const step = Math.max(0.5, length / 8000);
  const count = Math.ceil(length / step - 1e-9);
  return Float64Array.from({ length: count + 1 }, (_, j) => Math.min(length, j * (length / count)));
}

/** A limit that falls by less asks for no braking point, m/s. */
const LEAST_FALL = 0.2;

export function speedMap(
  context: OutingContext,
  railState: RailState,
  models: MapModels,
  grid: Float64Array,
  ceilings: readonly Ceiling[],
): SpeedMap {
  const { line, outing } = context;
  const margin = stopMargin(context);
  const cap = lowestCeiling(grid.length, ceilings);
  const available = availableAlong(line, grid, margin, seenBy(outing), driverBehind(outing, context.loaded));
  const step = grid[1] - grid[0];
  const brake = leastBrake(models.cautious, fastestAllowed(ceilings, grid.length));
  const stops = new Float64Array(grid.length);
  const { speed, byStopping } = limitsByStopping(
    models.cautious,
    grid[0],
    step,
    cap.speed,
    available.distance,
    (j) => {
      // A train that its brake does not hold may not go there, whether or not anything is known to be ahead; that
      // it comes to a stand in the next hollow is no stop.
      const { distance } = models.cautious.trace;
      stops[j] = holdsFall(models.cautious, brake, grid[j]) ? distance : Infinity;
    },
  );
  const reasons: SpeedReason[] = [
    ...ceilings.map((c) => c.reason),
    ...available.reasons,
    { kind: 'cannot-stop', what: 'brake does not hold the fall', source: 'engine' },
  ];
  const reason = new Uint16Array(grid.length);
  const likelyStop = new Float64Array(grid.length);
  const cautiousStop = new Float64Array(grid.length);
  const gap = new Float64Array(grid.length);
  const least = outing.host.leastGap?.value;
  const planned = outing.plannedSpeed ?? Infinity;
  for (let j = 0; j < grid.length; j++) {
    const stop = stops[j];
    if (stop === Infinity) {
      speed[j] = 0;
      reason[j] = reasons.length - 1;
    } else reason[j] = byStopping[j] ? ceilings.length + available.reason[j] : cap.reason[j];
    const run = Math.min(speed[j], planned);
    likelyStop[j] = stopDistance(models.likely, grid[j], run);
    // Caution is set on a few kinds of ground: elsewhere it may be the milder, and is then not what counts.
    const cautious = run < speed[j] ? stopDistance(models.cautious, grid[j], run) : stop;
    cautiousStop[j] = Math.max(cautious, likelyStop[j]);
    gap[j] = gapNeeded(cautiousStop[j], margin, least);
  }
  return { railState, step, at: grid, limit: speed, reason, reasons, likelyStop, cautiousStop, gap };
}

function lowestCeiling(
  count: number,
  ceilings: readonly Ceiling[],
): { speed: Float64Array; reason: Uint16Array } {
  const speed = new Float64Array(count).fill(Infinity);
  const reason = new Uint16Array(count);
  ceilings.forEach((ceiling, i) => {
    for (let j = 0; j < count; j++) {
      if (ceiling.speed[j] < speed[j]) {
        speed[j] = ceiling.speed[j];
        reason[j] = i;
      }
    }
  });
  return { speed, reason };
}

/**
 * Where the driver must act for each booked stop and each fall of the limit, from the permitted (or the
 * planned, if lower) speed there: the last grid point from which the cautious stop, or the same braking
 * followed until the lower speed is reached, fits into the way there. A limit that begins between two grid
 * points is met at the first of them. A limit that falls on and on is one fall, braked for where its parts ask for it first.
 */
export function brakingPoints(context: OutingContext, map: SpeedMap, cautious: StopModel): BrakingPoint[] {
  const { line, outing } = context;
  const cruise = (j: number): number => Math.min(map.limit[j], outing.plannedSpeed ?? Infinity);
  const points: BrakingPoint[] = [];
  for (const place of line.places) {
    if (!place.stop) continue;
    const point = backFrom(context, map, cruise, cautious, place.at, 0);
    if (point) points.push({ kind: 'stop', what: place.name, target: place.at, ...point });
  }
  // A loop's last point is its first again: what begins at the origin is seen from the point before it.
  const last = map.at.length - 1;
  let high = cruise(line.loop ? last - 1 : 0);
  let fall: BrakingPoint | undefined;
  for (let j = line.loop ? 0 : 1; j < (line.loop ? last : last + 1); j++) {
    const before = j > 0 ? j - 1 : last - 1;
    if (cruise(j) >= cruise(before)) {
      if (fall) points.push(fall);
      fall = undefined;
      high = cruise(j);
    }
    if (cruise(j) >= high - LEAST_FALL || cruise(j) <= 0) continue;
    high = cruise(j);
    const target = map.at[before];
    const point = backFrom(context, map, cruise, cautious, target, high);
    if (!point) continue;
    const first = fall && wayTo(fall.at, target, line) > wayTo(point.at, target, line) ? fall : point;
    fall = {
      kind: 'slow',
      what: map.reasons[map.reason[j]].what,
      target,
      at: first.at,
      fromSpeed: first.fromSpeed,
      toSpeed: high,
    };
  }
  if (fall) points.push(fall);
  return points.sort((a, b) => a.at - b.at);
}

/** Way ahead from one place to another, m. */
const wayTo = (from: number, to: number, { loop, length }: OutingContext['line']): number =>
  to - from + (loop && from > to ? length : 0);

function backFrom(
  context: OutingContext,
  map: SpeedMap,
  cruise: (j: number) => number,
  cautious: StopModel,
  target: number,
  toSpeed: number,
): { at: number; fromSpeed: number; toSpeed: number } | undefined {
  const { line } = context;
  const start = Math.min(map.at.length - 1, Math.floor((target - map.at[0]) / map.step));
  for (let back = 1; back < map.at.length; back++) {
    let j = start - back;
    if (j < 0) {
      if (!line.loop) return undefined;
      j += map.at.length - 1;
      if (j <= start) return undefined;
    }
    const way = wayTo(map.at[j], target, line);
    const v = cruise(j);
    if (v <= toSpeed + 1e-6) return undefined;
    if (slowingDistance(cautious, map.at[j], v, toSpeed) <= way) {
      return { at: map.at[j], fromSpeed: v, toSpeed };
    }
  }
  return undefined;
}
