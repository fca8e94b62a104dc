/** How far can the driver see? */

import type { Question } from '../question.ts';
import { askSight } from '../speed/ask.ts';

export const sight: Question<null> = {
  id: 'sight',
  reads: ['line', 'direction'],
  codes: ['sight-unknown'],
  ask: ({ ready }) => ({ findings: askSight(ready), data: null }),
};
