/** Single stops with their sampled percentiles, and car counts. */

import { turnCounts, turnOf } from '../engine/answer/chainage.ts';
import { countCars as countsOf } from '../engine/answer/counts.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import type { CarCount } from '../engine/answer/types.ts';
import { prepare } from '../engine/motion/prepare.ts';
import { SAMPLES, SEED, sampleStops, summarise } from '../engine/motion/sample.ts';
import type { StopResult } from '../engine/motion/stop-result.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import { figure } from './stops-at-hand.ts';

/** A stop with its sampled percentiles. The cautious figure is never below the sampled bound nor the likely stop. */
export function stopFrom(outing: Outing, at: number, speed: number): StopResult {
  const context = openOuting(outing);
  const ready = prepare(context);
  const state = outing.conditions.railState;
  const { likely, cautious } = ready.models(state);
  const s = turnOf(outing)(at);
  const sampled = summarise(sampleStops(ready.inputs(state), s, speed, SAMPLES, SEED));
  const careful = figure(cautious, s, speed);
  const probable = figure(likely, s, speed);
  const distance = Math.max(careful.distance, sampled.p99, probable.distance);
  return { at, speed, likely: probable, cautious: { ...careful, distance }, sampled };
}

/** Car counts for all rail states, in the line's own chainage. */
export function countCars(outing: Outing): readonly CarCount[] {
  return turnCounts(outing, countsOf(inquire(outing)));
}
