/** Do the couplers swing as far as the curves of the line ask? */
import type { Question } from '../question.ts';
import { askSwing, type SwingData } from './ask.ts';
import { swingFindings } from './findings.ts';

export const swing: Question<SwingData> = {
  id: 'swing',
  reads: ['line', 'direction', 'train', 'assumed'],
  findings: swingFindings,
  ask: ({ context }) => askSwing(context),
};
