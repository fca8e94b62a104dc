/** What happens if the train parts? */
import { balance } from '../balance/question.ts';
import { chains } from '../chains/question.ts';
import type { Question } from '../question.ts';
import { speed } from '../speed/question.ts';
import { askParting, type GapParting } from './ask.ts';
import { partFindings } from './findings.ts';

export const part: Question<GapParting[]> = {
  id: 'part',
  reads: [
    'line',
    'direction',
    'train',
    'chains',
    'riders',
    'conditions',
    'assumed',
    'host',
    'extraLimits',
    'restrictions',
    'plannedSpeed',
    'following',
  ],
  findings: partFindings,
  ask: ({ context, ready, of }) =>
    askParting({
      context,
      chains: of(chains).data,
      careful: ready.careful,
      speeds: of(speed).data.running,
      bodies: of(balance).data.data,
    }),
};
