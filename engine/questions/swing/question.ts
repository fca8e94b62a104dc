/** Do the couplers swing as far as the curves of the line ask? */
import type { Question } from '../question.ts';
import { askSwing, type SwingData } from './ask.ts';

export const swing: Question<SwingData> = {
  id: 'swing',
  reads: ['line', 'direction', 'train', 'assumed'],
  codes: ['coupler-swing-short', 'coupler-swing-unknown', 'assumed'],
  ask: ({ context }) => askSwing(context),
};
