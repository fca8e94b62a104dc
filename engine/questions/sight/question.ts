/** Who drives, and how far can the driver see? */

import type { Question } from '../question.ts';
import { expectedSpeed } from '../speed/ceilings.ts';
import { speed } from '../speed/question.ts';
import { askSight } from './ask.ts';
import { askDriving } from './driving.ts';
import { sightFindings } from './findings.ts';

export const sight: Question<null> = {
  id: 'sight',
  reads: [
    'line',
    'direction',
    'train',
    'riders',
    'conditions',
    'assumed',
    'host',
    'extraLimits',
    'restrictions',
    'plannedSpeed',
  ],
  findings: sightFindings,
  ask: ({ ready, of }) => {
    const { map, ceilings } = of(speed).data;
    const wanted = expectedSpeed(ready.context, map.at, ceilings);
    return { findings: [...askDriving(ready.context), ...askSight(ready, map, wanted)], data: null };
  },
};
