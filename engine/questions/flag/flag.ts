/**
 * A flag protects the rear: how far behind a stopped train a flagman must stand.
 *
 *   x = min { x : s + D(s, v) + m ≤ r  at the first s with r − x − s ≤ sight(s) }
 *
 * r rear of the stopped train (m), x distance of the flag behind it, s where the following train's driver
 * first sees the flag, D its cautious stopping distance from its running speed v there, m the margin kept.
 * The following train is taken to be like this one. Walking: x at an even pace, against the time until that
 * driver comes in sight.
 */

import type { StopModel } from '../../motion/model.ts';
import { stopDistance } from '../../motion/stop.ts';
import { type OutingContext, stopMargin } from '../../outing/open.ts';
import { covers } from '../../things/line/sights.ts';

export interface FlagPlace {
  /** Rear of the stopped train, m. */
  readonly rear: number;
  /** Where the flag must stand, m behind the rear; null: no place on the line is far enough. */
  readonly distance: number | null;
  /** Where the following driver first sees it, m, and how fast that train then runs, m/s. */
  readonly seenAt: number;
  readonly speed: number;
  /** Its cautious stop from there, m. */
  readonly stop: number;
  /** s to walk to the flag's place. */
  readonly walk: number;
  /** s until the following train's driver is at `seenAt`; null: no following train is stated. */
  readonly arrives: number | null;
}

export interface FlagQuestion {
  readonly context: OutingContext;
  readonly model: StopModel;
  /** Running speed by node of an even grid from 0, m/s, and the grid's step, m. */
  readonly speeds: Float64Array;
  readonly step: number;
}

/** @param rears chainages of the stopped train's rear, m, growing */
export function flagPlaces(question: FlagQuestion, rears: Float64Array): FlagPlace[] {
  const { context, step } = question;
  const nodes = question.speeds.length - 1;
  const sight = sightAhead(question);
  const need = Float64Array.from({ length: nodes }, (_, j) => stopFrom(question, j));
  const margin = stopMargin(context);
  return Array.from(rears, (rear) => placeFor(question, rear, sight, need, margin, nodes, step));
}

/**
 * Clear track ahead of a driver at each node, m; Infinity where nothing shortens it. On a line of which no
 * sight at all is known the flag counts as seen only when it is reached.
 */
function sightAhead({ context: { line }, speeds, step }: FlagQuestion): Float64Array {
  const sight = new Float64Array(speeds.length - 1).fill(line.sights.length > 0 ? Infinity : 0);
  for (const { from, to, distance, direction } of line.sights) {
    if (direction === 'reverse') continue;
    for (let j = 0; j < sight.length; j++) {
      if (covers(line, from, to, j * step)) sight[j] = Math.min(sight[j], distance);
    }
  }
  return sight;
}

const followSpeed = ({ context, speeds }: FlagQuestion, j: number): number =>
  context.outing.following?.speed ?? speeds[j];

const stopFrom = (question: FlagQuestion, j: number): number =>
  stopDistance(question.model, j * question.step, followSpeed(question, j));

/** The flag moves back metre by metre until whoever first sees it can stop short of the train. */
function placeFor(
  question: FlagQuestion,
  rear: number,
  sight: Float64Array,
  need: Float64Array,
  margin: number,
  nodes: number,
  step: number,
): FlagPlace {
  const { line, outing } = question.context;
  const pace = outing.assumed.practice['walking-pace'].value;
  const farthest = line.loop ? line.length - step : rear;
  for (let x = 0; x <= farthest; x += 1) {
    const flag = rear - x;
    const seen = firstSeen(line.loop, flag, sight, nodes, step, rear - line.length);
    const j = wrapped(seen, nodes);
    if (seen * step + need[j] + margin > rear) continue;
    return { ...answer(question, rear, seen * step, j, need[j]), distance: x, walk: x / pace };
  }
  const seen = firstSeen(line.loop, rear - farthest, sight, nodes, step, rear - line.length);
  const j = wrapped(seen, nodes);
  return { ...answer(question, rear, seen * step, j, need[j]), distance: null, walk: Infinity };
}

const wrapped = (node: number, nodes: number): number => ((node % nodes) + nodes) % nodes;

/** Node from which a flag is seen and stays in sight: going back from it as long as it stays in sight. */
function firstSeen(
  loop: boolean,
  flag: number,
  sight: Float64Array,
  nodes: number,
  step: number,
  start: number,
): number {
  const least = loop ? Math.ceil(start / step) : 0;
  let node = Math.floor(flag / step);
  while (node - 1 >= least && flag - (node - 1) * step <= sight[wrapped(node - 1, nodes)]) node--;
  return Math.max(node, least);
}

function answer(
  question: FlagQuestion,
  rear: number,
  seenAt: number,
  j: number,
  stop: number,
): Omit<FlagPlace, 'distance' | 'walk'> {
  const { outing, loaded } = question.context;
  const { following } = outing;
  const speed = followSpeed(question, j);
  // Its head passed the place of ours `after` seconds ago.
  const arrives =
    following && following.speed > 0
      ? Math.max(0, following.after - (rear + loaded.length - seenAt) / following.speed)
      : null;
  return { rear, seenAt, speed, stop, arrives };
}
