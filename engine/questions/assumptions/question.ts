/** What was taken for what the papers do not say? */

import type { Question } from '../question.ts';
import { askAssumptions } from './ask.ts';

export const assumptions: Question<null> = {
  id: 'assumptions',
  reads: ['assumptions'],
  codes: ['assumed'],
  ask: ({ context }) => ({ findings: askAssumptions(context), data: null }),
};
