/** How far behind a train that stands must the flag be? */

import type { Question } from '../question.ts';
import { speed } from '../speed/question.ts';
import { askFlag } from './ask.ts';
import { flagFindings } from './findings.ts';
import type { FlagPlace } from './flag.ts';

export const flag: Question<FlagPlace[]> = {
  id: 'flag',
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
    'following',
  ],
  findings: flagFindings,
  ask: ({ context, of }) => {
    const { models, running, map } = of(speed).data;
    return askFlag({ context, model: models.cautious, speeds: running, step: map.step });
  },
};
