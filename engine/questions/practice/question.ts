/** Does the outing keep what the trade always asks? */
import type { Question } from '../question.ts';
import { askPractice } from './ask.ts';
import { practiceFindings } from './findings.ts';

export const practice: Question<null> = {
  id: 'practice',
  reads: ['line', 'train', 'chains', 'riders', 'host', 'conditions', 'direction', 'assumed'],
  findings: practiceFindings,
  ask: ({ context }) => ({ findings: askPractice(context), data: null }),
};
