/** Is what the host asks to be in date in date? */
import type { Question } from '../question.ts';
import { askOrder } from './ask.ts';
import { orderFindings } from './findings.ts';

export const order: Question<null> = {
  id: 'order',
  reads: ['host', 'train', 'line', 'riders', 'crew', 'shown', 'defects', 'restrictions', 'direction'],
  findings: orderFindings,
  ask: ({ context }) => ({ findings: askOrder(context.outing), data: null }),
};
