/**
 * Speed ceilings that need no computation of stopping: host, places, vehicles, the agreed, the map's end.
 */

import { MPH } from '../../base/constants.ts';
import type { OutingContext } from '../../outing/open.ts';
import { restrictionsHere } from '../../outing/restricted.ts';
import { turnedStretch } from '../../things/line/geometry.ts';
import { covers } from '../../things/line/sights.ts';
import type { Line } from '../../things/line/types.ts';
import type { LoadedVehicle } from '../../things/train/loaded.ts';
import type { Ceiling } from '../question.ts';
import { slowestByStandards } from '../standards/look.ts';
import type { SpeedReason } from './types.ts';

/** The speed map looks no higher than this where a speed is stated, m/s (20 mph). */
export const HIGHEST_LOOKED_AT: number = 20 * MPH;

export function hostCeilings(context: OutingContext, grid: Float64Array): Ceiling[] {
  const { outing, line, loaded } = context;
  const ceilings: Ceiling[] = [looked(context, grid)];
  const { speed } = outing.host;
  if (speed)
    ceilings.push(
      even(grid, speed.value, { kind: 'host-line', what: outing.host.name, source: speed.source }),
    );
  const sheet = slowestByStandards(context);
  if (sheet) ceilings.push(even(grid, sheet.speed, { ...sheet, kind: 'host-line' }));
  for (const limit of line.speedLimits) {
    const reason: SpeedReason = { kind: 'host-place', what: limit.why, source: limit.source };
    ceilings.push(stretch(line, grid, limit, loaded.length, reason));
  }
  const agreed: SpeedReason = { kind: 'agreed', what: 'agreed for this outing', source: 'outing' };
  for (const limit of outing.extraLimits) {
    ceilings.push(stretch(line, grid, runningStretch(context, limit), loaded.length, agreed));
  }
  for (const { why, source, speed: most = 0, ...where } of restrictionsHere(outing))
    ceilings.push(
      stretch(line, grid, { ...where, speed: most }, loaded.length, {
        kind: 'temporary',
        what: why,
        source,
      }),
    );
  const slowest = loaded.vehicles.reduce((a, b) => (ratedSpeed(b) < ratedSpeed(a) ? b : a)).vehicle;
  if (slowest.ratings.speed !== undefined)
    ceilings.push(
      even(grid, slowest.ratings.speed, { kind: 'vehicle', what: slowest.name, source: 'vehicle' }),
    );
  return ceilings;
}

const ratedSpeed = ({ vehicle }: LoadedVehicle): number => vehicle.ratings.speed ?? Infinity;

/** No higher than 20 mph; where neither host, line nor plan states a speed, than what is assumed. */
function looked({ outing, line }: OutingContext, grid: Float64Array): Ceiling {
  const stated = outing.host.speed !== undefined;
  const unstated = Math.max(outing.assumed.unstatedSpeed, outing.plannedSpeed ?? 0);
  const ceiling = even(grid, stated ? HIGHEST_LOOKED_AT : Math.min(HIGHEST_LOOKED_AT, unstated), {
    kind: 'looked-no-higher',
    what: stated ? 'highest speed looked at' : 'no speed is stated',
    source: 'Heedway',
  });
  for (const { from, to } of stated ? [] : line.speedLimits) {
    for (let j = 0; j < grid.length; j++) {
      if (covers(line, from, to, grid[j])) ceiling.speed[j] = HIGHEST_LOOKED_AT;
    }
  }
  return ceiling;
}

/** What a driver would run at: the ceilings, or the planned speed where lower. */
export function runningSpeed(
  context: OutingContext,
  grid: Float64Array,
  ceilings: readonly Ceiling[],
): Float64Array {
  const planned = context.outing.plannedSpeed ?? Infinity;
  const speed = new Float64Array(grid.length).fill(planned);
  for (const ceiling of ceilings) {
    for (let j = 0; j < grid.length; j++) if (ceiling.speed[j] < speed[j]) speed[j] = ceiling.speed[j];
  }
  return speed;
}

/** What the driver may expect to run at: the host's own limits, not those that the train's nature sets. */
export const expectedSpeed = (
  context: OutingContext,
  grid: Float64Array,
  ceilings: readonly Ceiling[],
): Float64Array =>
  runningSpeed(
    context,
    grid,
    ceilings.filter(({ reason: { kind } }) => kind !== 'balance' && kind !== 'flange' && kind !== 'curve'),
  );

/** Agreed limits are written in the line's own chainage; this turns one to the running direction. */
function runningStretch<T extends { from: number; to: number; speed: number }>(
  context: OutingContext,
  limit: T,
): T {
  return context.outing.direction === 'forward' ? limit : turnedStretch(context.line, limit);
}

const even = (grid: Float64Array, speed: number, reason: SpeedReason): Ceiling => ({
  reason,
  speed: new Float64Array(grid.length).fill(speed),
});

/** A limit over a stretch holds until the train's rear has left it. */
function stretch(
  line: Line,
  grid: Float64Array,
  limit: { readonly from: number; readonly to: number; readonly speed: number },
  trainLength: number,
  reason: SpeedReason,
): Ceiling {
  const speed = new Float64Array(grid.length).fill(Infinity);
  const span = limit.to - limit.from + (limit.to < limit.from ? line.length : 0) + trainLength;
  const whole = line.loop && span >= line.length;
  let to = limit.from + span;
  if (line.loop && to > line.length) to -= line.length;
  for (let j = 0; j < grid.length; j++) {
    if (whole || covers(line, limit.from, to, grid[j])) speed[j] = limit.speed;
  }
  return { reason, speed };
}
