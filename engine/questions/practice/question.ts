/** Does the outing keep what the trade always asks? */
import type { Question } from '../question.ts';
import { askPractice } from './ask.ts';

export const practice: Question<null> = {
  id: 'practice',
  reads: ['line', 'train', 'chains', 'riders', 'host', 'conditions', 'direction', 'assumed'],
  codes: [
    'child-alone',
    'infant-aboard',
    'more-people-than-seats',
    'seat-shared',
    'coupler-heights-differ',
    'coupler-height-unknown',
    'no-chain-on-grade',
    'dark-at-night',
    'brake-not-tried',
  ],
  ask: ({ context }) => ({ findings: askPractice(context), data: null }),
};
