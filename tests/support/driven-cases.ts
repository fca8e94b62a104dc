/** Random outings with many limits, mapped and gathered into zones; chainage in the running direction. */
import type { StopModel } from '../../engine/motion/model.ts';
import type { OutingContext } from '../../engine/outing/open.ts';
import { hostCeilings } from '../../engine/questions/speed/ceilings.ts';
import { gridOf, speedMap } from '../../engine/questions/speed/map.ts';
import type { Driven, SpeedMap } from '../../engine/questions/speed/types.ts';
import { drivenZones, SPEED_STEPS } from '../../engine/questions/speed/zones.ts';
import { dressed } from './dressed-outings.ts';
import { drawer } from './random-outings.ts';
import { ready } from './ready.ts';

const systems = ['imperial', 'metric'] as const;

export interface DrivenCase {
  readonly context: OutingContext;
  readonly map: SpeedMap;
  readonly cautious: StopModel;
  readonly driven: Driven;
}

/** With up to five stretches at speeds of their own, some shorter than the train. */
export function drivenCase(seed: number): DrivenCase {
  const draw = drawer(seed + 7);
  const outing = dressed(seed);
  const { length } = outing.line;
  const extraLimits = Array.from({ length: Math.floor(draw(0, 6)) }, () => {
    const from = draw(0, length * 0.95);
    return { from, to: Math.min(length, from + draw(1, 60)), speed: draw(0.2, 5) };
  });
  const { context, prepared } = ready({ ...outing, extraLimits }, 1);
  const models = prepared.models(outing.conditions.railState);
  const grid = gridOf(length);
  const map = speedMap(context, outing.conditions.railState, models, grid, hostCeilings(context, grid));
  const driven = drivenZones(context, map, models.cautious, SPEED_STEPS[systems[seed % 2]]);
  return { context, map, cautious: models.cautious, driven };
}
