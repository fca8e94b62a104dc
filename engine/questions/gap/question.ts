/** How far behind the train ahead? */

import type { Question } from '../question.ts';
import { speed } from '../speed/question.ts';
import { askGap } from './ask.ts';
import { gapFindings } from './findings.ts';

export const gap: Question<null> = {
  id: 'gap',
  reads: [
    'line',
    'direction',
    'train',
    'riders',
    'conditions',
    'assumed',
    'host',
    'extraLimits',
    'restrictions',
    'plannedSpeed',
  ],
  findings: gapFindings,
  ask: ({ ready, of }) => ({ findings: askGap(ready, of(speed).data.map), data: null }),
};
