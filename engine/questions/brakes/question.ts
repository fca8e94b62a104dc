/** How do the brakes fill, how long do they stand, what is lost with the hose? */

import type { Question } from '../question.ts';
import { askBrakes, type BrakeData } from './ask.ts';

export const brakes: Question<BrakeData> = {
  id: 'brakes',
  reads: ['line', 'direction', 'train', 'riders', 'conditions', 'assumed'],
  codes: [
    'brake-slow-to-fill',
    'brake-slower-than-stated',
    'brake-slow-to-release',
    'brake-part-unknown',
    'reservoir-too-small',
    'brake-stronger-than-stated',
    'few-applications',
    'leaks-off-before-time',
    'leak-unknown',
    'brake-ratio-uneven',
    'slides-first',
    'brake-lost-with-hose',
    'supply-loss-unknown',
  ],
  ask: ({ context }) => askBrakes(context),
};
