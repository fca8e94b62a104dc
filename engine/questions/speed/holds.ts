/**
 * Does the brake hold the fall? Where it does not, a train under full brake runs faster and faster, and whether
 * it stops at all is for the ground further on to say.
 *
 *   G(v) + R(v) ≥ −m·W′(s)      at every v from 0 to the fastest the line allows
 *
 * G full brake, R rolling resistance, m·W′ pull of grade and curves under the whole train (N): a pitch shorter
 * than the train pulls with its mean. A stop that begins where the brake holds and runs over such a place counts
 * as none if its speed rises by more than a tenth; if its momentum only carries it over, it is a stop.
 */

import type { StopModel } from '../../motion/model.ts';
import { lostAt } from '../../motion/rails.ts';
import { SPEED_STEP } from '../../motion/stop-inputs.ts';
import { slopeAt } from '../../things/line/potential.ts';
import type { Ceiling } from '../question.ts';

/** Speed that a stop may gain on a fall, as a share of that at which the driver acts. */
const RISE = 1.1;

/** Speed at which it is told which wheels slide on another rail, m/s (4 mph). */
const WALK = 4 * SPEED_STEP;

/** Pull of the fall under the train with its head at s, N; negative on a rise. */
const pullAt = (model: StopModel, s: number): number => -model.massFactor * slopeAt(model.potential, s);

/** Pull of the fall at a place, and what the rail there takes from the brakes against the day's own, N. */
export interface Hardest {
  readonly at: number;
  readonly pull: number;
  readonly lost: number;
}

/** Where the fall pulls hardest between two places of the head, on rail as it is there. */
export function hardestPull(model: StopModel, from: number, to: number): Hardest {
  const { step, count } = model.potential;
  const end = Math.min(to, model.potential.from + (count - 1) * step);
  const pulls = (at: number): Hardest => ({ at, pull: pullAt(model, at), lost: lostAt(model, at, WALK) });
  let worst = pulls(from);
  const look = (s: number): void => {
    const here = pulls(s);
    if (here.pull + here.lost > worst.pull + worst.lost) worst = here;
  };
  for (let s = from + step; s < end; s += step) look(s);
  if (end > from) look(end);
  return worst;
}

/** @param brake N, from `leastBrake` */
export const overcomes = ({ pull, lost }: Hardest, brake: number): boolean => pull + lost > brake;

/**
 * Whether the brake holds the train that was to stop from s: the stop is the model's last.
 *
 * @param brake N, from `leastBrake`
 */
export function holdsFall(model: StopModel, brake: number, s: number): boolean {
  if (model.holdsEverywhere) return true;
  if (pullAt(model, s) + lostAt(model, s, WALK) > brake) return false;
  const { distance, speedAtAction, topSpeed } = model.trace;
  return topSpeed <= RISE * speedAtAction || !overcomes(hardestPull(model, s, s + distance), brake);
}

/** The fastest that any place of the line allows, m/s. */
export function fastestAllowed(ceilings: readonly Ceiling[], count: number): number {
  let fastest = 0;
  for (let j = 0; j < count; j++) {
    let least = Infinity;
    for (let i = 0; i < ceilings.length; i++) if (ceilings[i].speed[j] < least) least = ceilings[i].speed[j];
    if (least > fastest) fastest = least;
  }
  return fastest;
}
