/** What happens if the train parts? */
import { balance } from '../balance/question.ts';
import { chains } from '../chains/question.ts';
import type { Question } from '../question.ts';
import { speed } from '../speed/question.ts';
import { askParting, type GapParting } from './ask.ts';

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
    'plannedSpeed',
    'following',
  ],
  codes: [
    'tail-runs-away',
    'tail-rolls-back',
    'tail-stands',
    'head-unmanned',
    'parting-held-by-chains',
    'held-train-runs-away',
    'held-train-rolls-back',
  ],
  ask: ({ context, ready, of }) =>
    askParting({
      context,
      chains: of(chains).data,
      caution: ready.caution(context.outing.conditions.railState),
      speeds: of(speed).data.running,
      bodies: of(balance).data.data,
    }),
};
