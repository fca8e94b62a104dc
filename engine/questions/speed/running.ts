/** How fast the train will run at each place, with all that sets it: what several questions start from. */
import type { MapModels } from '../../motion/model.ts';
import type { Prepared } from '../../motion/prepare.ts';
import { askBalance, type BalanceAnswer } from '../balance/ask.ts';
import type { Ceiling } from '../question.ts';
import { hostCeilings } from './ceilings.ts';
import { gridOf, speedMap } from './map.ts';
import type { SpeedMap } from './types.ts';

export interface Running {
  readonly balance: BalanceAnswer;
  readonly ceilings: readonly Ceiling[];
  /** For today's rail state. */
  readonly map: SpeedMap;
  readonly models: MapModels;
  /** Permitted or planned speed, whichever is lower, on the map's grid, m/s. */
  readonly running: Float64Array;
}

export function runningOf(ready: Prepared): Running {
  const { context } = ready;
  const { outing, line } = context;
  const state = outing.conditions.railState;
  const grid = gridOf(line.length);
  const balance = askBalance(context, grid);
  const ceilings = [...hostCeilings(context, grid), ...balance.ceilings];
  const models = ready.models(state);
  const map = speedMap(context, state, models, grid, ceilings);
  const planned = outing.plannedSpeed ?? Infinity;
  return { balance, ceilings, map, models, running: map.limit.map((v) => Math.min(v, planned)) };
}
