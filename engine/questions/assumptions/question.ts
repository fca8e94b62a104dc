/** What was taken for what the papers do not say? */

import type { Question } from '../question.ts';
import { askAssumptions } from './ask.ts';
import { assumptionFindings } from './findings.ts';

export const assumptions: Question<null> = {
  id: 'assumptions',
  reads: ['assumptions'],
  findings: assumptionFindings,
  ask: ({ context }) => ({ findings: askAssumptions(context), data: null }),
};
