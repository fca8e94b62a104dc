/** Does it stand still? */

import type { Question } from '../question.ts';
import { askHolding } from './ask.ts';
import type { HoldResult } from './types.ts';

export const hold: Question<HoldResult> = {
  id: 'hold',
  reads: ['line', 'direction', 'train', 'riders', 'conditions', 'assumed', 'host'],
  codes: ['does-not-hold', 'holds-only-while-brake-is-tight', 'no-parking-brake'],
  ask: ({ ready }) => askHolding(ready),
};
