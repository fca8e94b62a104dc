/** Random outings opened and prepared, as the independent checks and laws need them. */

import { modelOf, type StopModel } from '../../engine/motion/model.ts';
import { type Prepared, prepare } from '../../engine/motion/prepare.ts';
import { likely, type Scenario } from '../../engine/motion/scenario.ts';
import { type OutingContext, openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';

export interface Ready {
  readonly outing: Outing;
  readonly context: OutingContext;
  readonly prepared: Prepared;
}

export function ready(outing: Outing, step = 0.5): Ready {
  const context = openOuting(outing);
  return { outing, context, prepared: prepare(context, step, 0) };
}

export const modelFor = ({ outing, prepared }: Ready, scenario: Scenario = likely, wary = false): StopModel =>
  modelOf(prepared.inputs(outing.conditions.railState), scenario, wary);
