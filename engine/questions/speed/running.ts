/** How fast the train will run at each place, with all that sets it: what several questions start from. */
import type { MapModels } from '../../motion/model.ts';
import type { Prepared } from '../../motion/prepare.ts';
import type { Ceiling } from '../question.ts';
import { hostCeilings } from './ceilings.ts';
import { gridOf, speedMap } from './map.ts';
import type { SpeedMap } from './types.ts';

export interface Running {
  readonly ceilings: readonly Ceiling[];
  /** For today's rail state. */
  readonly map: SpeedMap;
  readonly models: MapModels;
  /** Permitted or planned speed, whichever is lower, on the map's grid, m/s. */
  readonly running: Float64Array;
}

/** @param ofBalance ceilings that keep the cars up and on the rails */
export function runningOf(ready: Prepared, ofBalance: readonly Ceiling[]): Running {
  const { context } = ready;
  const { outing, line } = context;
  const state = outing.conditions.railState;
  const grid = gridOf(line.length);
  const ceilings = [...hostCeilings(context, grid), ...ofBalance];
  const models = ready.models(state);
  const map = speedMap(context, state, models, grid, ceilings);
  const planned = outing.plannedSpeed ?? Infinity;
  return { ceilings, map, models, running: map.limit.map((v) => Math.min(v, planned)) };
}
