/** How fast, where, and what sets it? */
import { balance } from '../balance/question.ts';
import type { Question } from '../question.ts';
import { askSpeeds } from './ask.ts';
import { expectedSpeed } from './ceilings.ts';
import { speedFindings } from './findings.ts';
import { type Running, runningOf } from './running.ts';

export const speed: Question<Running> = {
  id: 'speed',
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
  findings: speedFindings,
  ask: ({ ready, of }) => {
    const data = runningOf(ready, of(balance).data.ceilings);
    const { map, ceilings } = data;
    return {
      findings: askSpeeds(ready, map, expectedSpeed(ready.context, map.at, ceilings), ceilings),
      data,
    };
  },
};
