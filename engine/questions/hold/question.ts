/** Does it stand still? */

import type { Question } from '../question.ts';
import { askHolding } from './ask.ts';
import { holdFindings } from './findings.ts';
import type { HoldResult } from './types.ts';

export const hold: Question<HoldResult> = {
  id: 'hold',
  reads: ['line', 'direction', 'train', 'riders', 'conditions', 'assumed', 'host'],
  findings: holdFindings,
  ask: ({ ready }) => askHolding(ready),
};
