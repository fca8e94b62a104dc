/** How far behind the train ahead, and may one come the other way? */

import type { Question } from '../question.ts';
import { speed } from '../speed/question.ts';
import { askGap } from './ask.ts';
import { gapFindings } from './findings.ts';
import { askMeeting } from './meeting.ts';

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
    'moves',
    'otherTrains',
  ],
  findings: gapFindings,
  ask: ({ context, ready, of }) => ({
    findings: [...askMeeting(context.written), ...askGap(ready, of(speed).data.map)],
    data: null,
  }),
};
