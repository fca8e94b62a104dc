/** Does the train clear what stands beside and over the line? */
import type { Question } from '../question.ts';
import { askClearance } from './ask.ts';
import { clearanceFindings } from './findings.ts';
import type { Clearances } from './look.ts';

export const clearance: Question<Clearances> = {
  id: 'clearance',
  reads: ['line', 'direction', 'train', 'riders', 'host', 'plannedSpeed', 'extraLimits', 'assumed'],
  findings: clearanceFindings,
  ask: ({ context }) => askClearance(context),
};
