/** How far can the driver see? */

import type { Question } from '../question.ts';
import { askSight } from '../speed/ask.ts';
import { expectedSpeed } from '../speed/ceilings.ts';
import { speed } from '../speed/question.ts';

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
    'plannedSpeed',
  ],
  codes: ['sight-unknown'],
  ask: ({ ready, of }) => {
    const { map, ceilings } = of(speed).data;
    return { findings: askSight(ready, map, expectedSpeed(ready.context, map.at, ceilings)), data: null };
  },
};
