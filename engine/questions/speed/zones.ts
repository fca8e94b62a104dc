/**
 * Speeds that can be driven: the permitted speeds gathered into few zones, each at one round speed.
 *
 * The rule, always toward the slower:
 *  1. every place is rounded down to the step;
 *  2. a zone is at least as long as the train and lasts at least five seconds at its speed: a shorter one joins its
 *     faster slower neighbour, and one that has none takes what it lacks from the faster ones on either side;
 *  3. a zone that saves less than three seconds on the speed of that neighbour joins it;
 *  4. a zone in which the brake cannot be put on in time for the next one joins it.
 * So a zone never stands above what is permitted anywhere in it. Of two neighbours the slower has the step of the
 * map between them. The way to a stand at the end of a line is no zone but an arrival: one act, and no speed to keep.
 */
import { MPH } from '../../base/constants.ts';
import type { StopModel } from '../../motion/model.ts';
import { stopDistance } from '../../motion/stop.ts';
import { type OutingContext, stopMargin } from '../../outing/open.ts';
import type { Line } from '../../things/line/types.ts';
import { brakingPoints } from './map.ts';
import { endsStanding, joined, lower, type Run, SAME } from './runs.ts';
import type { BrakingPoint, Driven, DrivenZone, SpeedMap } from './types.ts';

/** What people read a speed to: half miles per hour, whole kilometres per hour, m/s. */
export const SPEED_STEPS: { readonly imperial: number; readonly metric: number } = {
  imperial: 0.5 * MPH,
  metric: 1 / 3.6,
};

/** @param step what speeds are rounded down to, m/s */
export function drivenZones(
  context: OutingContext,
  map: SpeedMap,
  cautious: StopModel,
  step: number,
): Driven {
  const { line, loaded } = context;
  const levels = levelsOf(line, map, loaded.length, step);
  const unplanned = withoutPlan(context);
  for (;;) {
    const runs = joined(levels, map, line.loop, loaded.length, step);
    const zones = zonesOf(line, map, runs, step);
    const acts = actsOf(unplanned, map, cautious, runs, zones);
    const late = runs.findIndex((_, i) => tooLate(runs, zones, i, line, map, acts));
    if (late < 0) return { step, zones, acts: actsOf(context, map, cautious, runs, zones) };
    const { first, count } = runs[late];
    lower(levels, first, count, runs[(late + 1) % runs.length].level);
  }
}

/** Whether the brake can be put on in time does not hang on a plan to run slower. */
function withoutPlan(context: OutingContext): OutingContext {
  const { plannedSpeed: _, ...outing } = context.outing;
  return { ...context, outing };
}

const pointsOf = (line: Line, map: SpeedMap): number => (line.loop ? map.at.length - 1 : map.at.length);

/** Where only the end of the line asks for a stop, from here to the end; `n`: nowhere. */
function arrivalFrom(line: Line, map: SpeedMap): number {
  let first = map.at.length;
  while (!line.loop && first > 0 && map.reasons[map.reason[first - 1]].kind === 'stopping-end') first--;
  return first;
}

/** Whole steps by grid point; on a loop the last point is the first again and has none. */
function levelsOf(line: Line, map: SpeedMap, trainLength: number, step: number): Int32Array {
  const points = pointsOf(line, map);
  const whole = (v: number): number => Math.floor((v / step) * (1 + SAME));
  const levels = Int32Array.from({ length: points }, (_, j) => whole(map.limit[j]));
  const last = arrivalFrom(line, map);
  if (last < points) {
    // On the way to a stand at the end: as before it, or, where it is the whole line, as a train's length on.
    const on = Math.min(points - 1, last + Math.ceil(trainLength / map.step));
    levels.fill(last > 0 ? levels[last - 1] : whole(Math.min(...map.limit.subarray(0, on + 1))), last);
  }
  return levels;
}

/** A fall to the next zone for which no braking point was found in time. */
function tooLate(
  runs: readonly Run[],
  zones: readonly DrivenZone[],
  i: number,
  line: Line,
  map: SpeedMap,
  acts: readonly BrakingPoint[],
): boolean {
  if (!line.loop && i === runs.length - 1) return false;
  const [run, next] = [i, (i + 1) % runs.length];
  if (runs[next].level >= runs[run].level || zones[next].speed <= 0) return false;
  const target = map.at[(runs[run].first + runs[run].count - 1) % pointsOf(line, map)];
  return !acts.some((act) => act.kind === 'slow' && act.target === target);
}

function zonesOf(line: Line, map: SpeedMap, runs: readonly Run[], step: number): DrivenZone[] {
  const points = pointsOf(line, map);
  return runs.flatMap((run, i) => {
    const [before, after] = [runs[i - 1] ?? runs[runs.length - 1], runs[i + 1] ?? runs[0]];
    const alone = runs.length === 1;
    // The slower of two has the step between them.
    const start = run.first - (!alone && run.level < before.level && (line.loop || i > 0) ? 1 : 0);
    const end =
      run.first +
      run.count -
      1 +
      (!alone && run.level < after.level && (line.loop || i < runs.length - 1) ? 1 : 0);
    const wrapped = (j: number): number => map.at[((j % points) + points) % points];
    const from = alone ? 0 : line.loop ? wrapped(start) : map.at[start];
    const to = alone ? line.length : line.loop ? wrapped(end) : map.at[end];
    const stands =
      i === runs.length - 1 && endsStanding(map, line.loop) ? standing(map, run, step) : undefined;
    const within = (last: number): DrivenZone => told(map, points, run, last, step, from, to);
    if (stands === undefined) return [within(run.first + run.count - 1)];
    const arrival: DrivenZone = {
      ...within(stands),
      kind: 'arrive',
      from: stands === run.first ? from : map.at[stands],
      to: line.length,
      reason: endReason(map),
    };
    return stands === run.first ? [arrival] : [{ ...within(stands), to: map.at[stands] }, arrival];
  });
}

/** Last point of the last run that still permits its speed, where the line's end asks for a stand beyond it. */
function standing(map: SpeedMap, run: Run, step: number): number | undefined {
  const v = run.level * step * (1 - SAME);
  let j = run.first;
  while (j + 1 < map.at.length && map.limit[j + 1] >= v && map.limit[j + 1] > 0) j++;
  return j + 1 < map.at.length ? j : undefined;
}

const endReason = (map: SpeedMap): DrivenZone['reason'] => map.reasons[map.reason[map.at.length - 1]];

function told(
  map: SpeedMap,
  points: number,
  run: Run,
  last: number,
  step: number,
  from: number,
  to: number,
): DrivenZone {
  let least = run.first % points;
  let [cautiousStop, gap] = [0, 0];
  for (let i = run.first; i <= last; i++) {
    const j = i % points;
    if (map.limit[j] < map.limit[least]) least = j;
    cautiousStop = Math.max(cautiousStop, map.cautiousStop[j]);
    gap = Math.max(gap, map.gap[j]);
  }
  // Below one step there is nothing round to drive at: what is permitted there, as it is.
  const speed = run.level > 0 ? Math.min(run.level * step, map.limit[least]) : map.limit[least];
  return { kind: 'run', from, to, speed, reason: map.reasons[map.reason[least]], cautiousStop, gap };
}

/** Where to brake for each slower zone and each stop, from the speed of the zone or the planned one. */
function actsOf(
  context: OutingContext,
  map: SpeedMap,
  cautious: StopModel,
  runs: readonly Run[],
  zones: readonly DrivenZone[],
): BrakingPoint[] {
  const limit = new Float64Array(map.at.length);
  const reason = new Uint16Array(map.at.length);
  const points = pointsOf(context.line, map);
  runs.forEach((run, i) => {
    for (let k = 0; k < run.count; k++) {
      const j = (run.first + k) % points;
      limit[j] = zones[i].speed;
      reason[j] = map.reasons.indexOf(zones[i].reason);
    }
  });
  if (points < map.at.length) {
    limit[points] = limit[0];
    reason[points] = reason[0];
  }
  const acts = brakingPoints(context, { ...map, limit, reason }, cautious);
  const arrival = zones.find((zone) => zone.kind === 'arrive');
  return arrival ? withArrival(context, map, cautious, arrival, acts) : acts;
}

/** The stand at the end of the line: at the stop that is booked on the way there, else as far as one may go. */
function withArrival(
  context: OutingContext,
  map: SpeedMap,
  cautious: StopModel,
  arrival: DrivenZone,
  acts: readonly BrakingPoint[],
): BrakingPoint[] {
  const { line, outing } = context;
  const target = line.length - stopMargin(context);
  const reached = acts.filter((act) => act.target <= target);
  if (reached.some((act) => act.kind === 'stop' && act.target >= arrival.from)) return reached;
  const v = Math.min(arrival.speed, outing.plannedSpeed ?? Infinity);
  let j = Math.max(0, map.at.indexOf(arrival.from));
  while (j + 1 < map.at.length && map.at[j + 1] + stopDistance(cautious, map.at[j + 1], v) <= target) j++;
  const named = line.places.find(
    (p) => (p.kind === 'station' || p.kind === 'stop') && (p.to ?? p.at) >= arrival.from,
  );
  const act: BrakingPoint = {
    kind: 'stop',
    what: named?.name ?? 'end of line',
    target,
    at: map.at[j],
    fromSpeed: v,
    toSpeed: 0,
  };
  return [...reached, act].sort((a, b) => a.at - b.at);
}
