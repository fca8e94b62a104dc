/** The sum of a tail's greatest speed: rolling down from where it last stood, or parted, over the mean fall. */

import { GRAVITY } from '../../base/constants.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import { wrapCell } from './ground.ts';
import { trafficOf } from './map.ts';
import type { Part } from './part.ts';
import { emptyRoll, roll } from './roll.ts';
import type { Path } from './types.ts';

/**
 * Undefined where the sum does not tell it: brakes are left on the tail, or it is nowhere faster than at the
 * parting.
 *
 * @param at place of the train's head at the parting, m
 * @param speed there, m/s
 */
export function runawaySum(
  context: OutingContext,
  part: Part,
  at: number,
  speed: number,
): SumRef | undefined {
  if (part.braked) return undefined;
  const path: Path = [];
  const out = emptyRoll();
  roll(part, Math.round(at / part.step), speed, trafficOf({ context }), out, path);
  const [from, to, start] = fastestRun(path, out.outcome === 'rolls' ? firstStand(path) : 0);
  const { climb, curves } = over(part, from, to);
  if (climb >= 0) return undefined;
  const { model } = part;
  const vehicles = context.loaded.vehicles.slice(part.first, part.last + 1);
  const mass = vehicles.reduce((sum, v) => sum + v.mass, 0) * model.massFactor;
  const perWeight = model.inertia / mass / GRAVITY;
  const distance = Math.abs(to - from);
  return {
    id: 'runaway-speed',
    inputs: {
      'start-speed': start,
      distance,
      fall: (-climb / distance) * perWeight,
      resistance: (part.a + curves / distance) * perWeight,
      'rotating-share': model.inertia / mass - 1,
    },
    differs: 'even',
  };
}

/** Where it first stands; of what rolls off again what counts comes after. */
function firstStand(path: Path): number {
  for (let i = 0; i < path.length; i += 3) if (path[i + 2] === 0) return i;
  return 0;
}

/** Where the run that ends at the greatest speed after a sample began and ended, m, and the speed with which it began, m/s. */
function fastestRun(path: Path, after: number): [from: number, to: number, start: number] {
  let top = after;
  for (let i = after; i < path.length; i += 3) if (Math.abs(path[i + 2]) > Math.abs(path[top + 2])) top = i;
  let first = top;
  while (first > 0 && path[first - 1] * path[top + 2] > 0) first -= 3;
  // From where it stood.
  if (first > 0 && path[first - 1] === 0) first -= 3;
  return [path[first + 1], path[top + 1], Math.abs(path[first + 2])];
}

/** Energy that grade and curves take from one place to another, J per kg of inertia. */
function over(
  { ground, step, loop, cells }: Part,
  from: number,
  to: number,
): { climb: number; curves: number } {
  const way = to < from ? -0.5 : 0.5;
  let climb = 0;
  let curves = 0;
  // A cell too many or too few at the ends is little over such a way.
  for (let s = Math.min(from, to); s < Math.max(from, to); s += step) {
    const j = wrapCell(loop, cells, Math.floor(s / step));
    climb += way * (ground.climb[j] - ground.back[j]);
    curves += (ground.climb[j] + ground.back[j]) / 2;
  }
  return { climb, curves };
}
