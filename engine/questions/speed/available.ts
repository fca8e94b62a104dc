/**
 * What is available for stopping at each place: sight, signals and other places that may ask for a stop,
 * the end of the line.
 *
 * Sight that nobody has stated is assumed: along the whole line where none is, else at each place that may ask
 * for a stop and has neither a sight of its own nor a stated stretch over it.
 */

import { type OutingContext, stopMargin } from '../../outing/open.ts';
import { type SeenToday, seenToday } from '../../outing/seen.ts';
import type { Outing } from '../../outing/types.ts';
import {
  covers,
  mayAsk,
  placesOfAssumedSight,
  sightIsStated,
  sightsAhead,
} from '../../things/line/sights.ts';
import type { Line } from '../../things/line/types.ts';
import { driverBehind } from '../../things/train/crew.ts';
import type { SpeedReason } from './types.ts';

export interface Available {
  /** m from the head at each grid point, margin taken off; Infinity: nothing known ahead to stop for. */
  readonly distance: Float64Array;
  /** Index into `reasons`. */
  readonly reason: Uint16Array;
  readonly reasons: readonly SpeedReason[];
}

/** What is taken of sight, m from the driver's seat. */
export interface Seen {
  readonly assumed: number;
  readonly today?: SeenToday;
}

export function seenBy(outing: Outing): Seen {
  const today = seenToday(outing);
  return { assumed: outing.assumed.sight, ...(today ? { today } : {}) };
}

/** What the sight that is assumed after dark is called among the reasons. */
export const AFTER_DARK = 'after dark';

const todaysReason = ({ stated }: SeenToday): SpeedReason =>
  stated ? { kind: 'stopping-visibility', what: 'visibility', source: 'the day' } : assumedReason(AFTER_DARK);

/**
 * @param grid chainages of the head, even, growing
 * @param margin kept to whatever the train must stop short of, m
 * @param sight clear track ahead where none is stated, m; and how far is seen today, whatever the line lets one see
 * @param eyes how far behind the head the driver sees from, m: so much of every sight lies beside the train
 * @param withEnd whether the end of a point-to-point line counts
 */
export function availableAlong(
  line: Line,
  grid: Float64Array,
  margin: number,
  sight: Seen,
  eyes: number,
  withEnd = true,
): Available {
  const distance = new Float64Array(grid.length).fill(Infinity);
  const reason = new Uint16Array(grid.length);
  const reasons: SpeedReason[] = [];
  const put = (index: number, metres: number, of: number): void => {
    const left = Math.max(0, metres - margin);
    if (left < distance[index]) {
      distance[index] = left;
      reason[index] = of;
    }
  };
  putSights(line, grid, sight.assumed, eyes, reasons, put);
  putPlaces(line, grid, sight.assumed, eyes, reasons, put);
  if (sight.today) {
    const of = reasons.push(todaysReason(sight.today)) - 1;
    for (let j = 0; j < grid.length; j++) put(j, sight.today.distance - eyes, of);
  }
  if (!line.loop && withEnd) {
    const of = reasons.push({ kind: 'stopping-end', what: 'end of line', source: 'line' }) - 1;
    for (let j = 0; j < grid.length; j++) put(j, line.length - grid[j], of);
  }
  return { distance, reason, reasons };
}

/** m. */
const STEP = 0.5;

/** What is left to stop in where least of the line is seen, stated or assumed, as every stop of the answer has it, m. */
export function leastRoom(context: OutingContext): number {
  const { line, outing, loaded } = context;
  const n = Math.max(2, Math.ceil(line.length / STEP) + 1);
  const grid = Float64Array.from({ length: n }, (_, j) => (j * line.length) / (n - 1));
  const eyes = driverBehind(outing, loaded);
  const { distance } = availableAlong(line, grid, stopMargin(context), seenBy(outing), eyes, false);
  return distance.reduce((a, b) => Math.min(a, b), Infinity);
}

type Put = (index: number, metres: number, of: number) => void;

const assumedReason = (what: string): SpeedReason => ({
  kind: 'stopping-assumed-sight',
  what,
  source: 'assumed',
});

function putSights(
  line: Line,
  grid: Float64Array,
  assumedSight: number,
  eyes: number,
  reasons: SpeedReason[],
  put: Put,
): void {
  if (!sightIsStated(line)) {
    const of = reasons.push(assumedReason('assumed sight')) - 1;
    for (let j = 0; j < grid.length; j++) put(j, assumedSight - eyes, of);
  }
  for (const sight of sightsAhead(line)) {
    const of = reasons.push({ kind: 'stopping-sight', what: 'sight', source: 'line' }) - 1;
    for (let j = 0; j < grid.length; j++) {
      // Short sight holds until the driver, and not only the head, has left it.
      const there = [grid[j], behind(line, grid[j], eyes)];
      if (there.some((s) => covers(line, sight.from, sight.to, s))) put(j, sight.distance - eyes, of);
    }
  }
}

const behind = (line: Line, s: number, by: number): number =>
  line.loop && s < by ? s - by + line.length : s - by;

/** At the point where it comes in the driver's sight, and up to one grid step either side, a stop short of it must fit. */
function putPlaces(
  line: Line,
  grid: Float64Array,
  assumedSight: number,
  eyes: number,
  reasons: SpeedReason[],
  put: Put,
): void {
  const step = grid[1] - grid[0];
  const assumed = new Set(placesOfAssumedSight(line));
  for (const place of line.places) {
    const sight = assumed.has(place) ? assumedSight : place.sight;
    if (!mayAsk.has(place.kind) || sight === undefined) continue;
    const kind = place.kind === 'signal' ? 'stopping-signal' : 'stopping-sight';
    const reason: SpeedReason = { kind, what: place.name, source: 'line' };
    const of = reasons.push(assumed.has(place) ? assumedReason(place.name) : reason) - 1;
    const left = sight - eyes;
    const seenAt = place.at - left;
    const at = line.loop ? ((seenAt % line.length) + line.length) % line.length : seenAt;
    const j = Math.round((at - grid[0]) / step);
    for (const i of [j - 1, j, j + 1]) {
      if (i >= 0 && i < grid.length) put(i, Math.min(left, left - (grid[i] - at)), of);
    }
  }
}
