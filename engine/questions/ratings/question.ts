/** Is anything loaded, or led round a curve, beyond what it is rated for? */

import type { Question } from '../question.ts';
import { askLoads } from './ask.ts';

export const ratings: Question<null> = {
  id: 'ratings',
  reads: ['line', 'direction', 'train', 'riders'],
  codes: [
    'car-overloaded',
    'axle-overloaded',
    'seat-overloaded',
    'rider-not-seated',
    'curve-too-tight',
    'grade-beyond-range',
    'train-longer-than-line',
  ],
  ask: ({ context }) => ({ findings: askLoads(context), data: null }),
};
