/** Is anything loaded, or led round a curve, beyond what it is rated for? */

import type { Question } from '../question.ts';
import { askLoads } from './ask.ts';
import { ratingFindings } from './findings.ts';

export const ratings: Question<null> = {
  id: 'ratings',
  reads: ['line', 'direction', 'train', 'riders'],
  findings: ratingFindings,
  ask: ({ context }) => ({ findings: askLoads(context), data: null }),
};
