/** Which brakes answer the driver, how hard may he brake today, and which wheels slide? */

import type { Question } from '../question.ts';
import { brakeGearFindings } from './findings.ts';
import { askBrakeGear } from './gear.ts';
import { askSliding, type BrakeGearData, heldOn, howHard } from './how-hard.ts';

export const brakeGear: Question<BrakeGearData> = {
  id: 'brakeGear',
  reads: ['train', 'riders', 'conditions', 'assumed', 'line', 'direction', 'host', 'plannedSpeed'],
  findings: brakeGearFindings,
  ask: ({ ready }) => {
    const hard = howHard(ready);
    const slides = hard.some(({ share }) => share < 1);
    const data = { howHard: hard, heldOn: slides ? heldOn(ready) : null };
    return { findings: [...askBrakeGear(ready), ...askSliding(ready, data)], data };
  },
};
