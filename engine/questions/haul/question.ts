/** Can it start everywhere, and keep up a speed on the ruling grade? */

import type { Question } from '../question.ts';
import { askHauling } from './ask.ts';
import { haulFindings } from './findings.ts';
import type { HaulResult } from './types.ts';

export const haul: Question<HaulResult | null> = {
  id: 'haul',
  reads: ['line', 'direction', 'train', 'riders', 'conditions', 'assumed'],
  findings: haulFindings,
  ask: ({ context }) => askHauling(context),
};
