/** The outing with the times of its brakes filled in from their parts: what every way of stopping starts from. */

import { dayAir } from '../engine/motion/prepare.ts';
import type { Outing } from '../engine/outing/types.ts';
import { timedTrain } from '../engine/things/brake/build-up-from-parts.ts';
import { loadTrain } from '../engine/things/train/loaded.ts';

/**
 * The outing with what the parts of its brakes tell (times, share of force, surge) written into the gears:
 * whatever stops the train then reckons with it. Once per outing, before the answer and its remedies.
 */
export function timedOuting(outing: Outing): Outing {
  const loaded = loadTrain(outing.train, outing.riders);
  const train = timedTrain(loaded, outing.assumed, dayAir(outing.conditions));
  return train === outing.train ? outing : { ...outing, train };
}
