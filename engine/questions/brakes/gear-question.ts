/** Which brakes answer the driver, and which wheels slide? */

import type { Question } from '../question.ts';
import { askBrakeGear } from '../speed/ask.ts';

export const brakeGear: Question<null> = {
  id: 'brakeGear',
  reads: ['train', 'riders', 'conditions', 'assumed'],
  codes: [
    'brake-force-unknown',
    'brake-not-worked-by-driver',
    'brake-kinds-do-not-work-together',
    'brake-pipe-broken',
    'wheels-slide',
    'vacuum-limited-by-air',
    'not-braked',
    'no-brake',
  ],
  ask: ({ ready }) => ({ findings: askBrakeGear(ready), data: null }),
};
