/** Can it start everywhere, and keep up a speed on the ruling grade? */

import type { Question } from '../question.ts';
import { askHauling } from './ask.ts';
import { haulFindings } from './findings.ts';
import type { HaulResult } from './types.ts';

export const haul: Question<HaulResult | null> = {
  id: 'haul',
  // A bad stretch is run over with the speed that driver or host means.
  reads: ['line', 'direction', 'train', 'riders', 'conditions', 'assumed', 'host', 'plannedSpeed'],
  findings: haulFindings,
  ask: ({ context }) => askHauling(context),
};
