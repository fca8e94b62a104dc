/** How do the brakes fill, how long do they stand, what is lost with the hose? */

import type { Question } from '../question.ts';
import { askBrakes, type BrakeData } from './ask.ts';
import { brakePartFindings } from './findings.ts';

export const brakes: Question<BrakeData> = {
  id: 'brakes',
  reads: ['line', 'direction', 'train', 'riders', 'conditions', 'assumed'],
  findings: brakePartFindings,
  ask: ({ context }) => askBrakes(context),
};
