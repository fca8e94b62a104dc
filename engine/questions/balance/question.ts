/** Do the cars stay up and on the rails? */

import type { Question } from '../question.ts';
import { gridOf } from '../speed/map.ts';
import { askBalance, type BalanceAnswer } from './ask.ts';

export const balance: Question<Pick<BalanceAnswer, 'data' | 'ceilings'>> = {
  id: 'balance',
  reads: [
    'line',
    'direction',
    'train',
    'riders',
    'conditions',
    'assumed',
    'host',
    'extraLimits',
    'plannedSpeed',
  ],
  codes: [
    'tips-at-rest',
    'stands-light-on-one-side',
    'curve-speed-limited-by-balance',
    'all-lean-goes-over',
    'lean-small',
    'centre-of-gravity-unknown',
    'truck-lifts',
    'trucks-uneven',
    'truck-overloaded',
    'wheel-unloads-on-twist',
    'twist-unknown',
    'flange-may-climb',
    'flange-shape-unknown',
  ],
  ask: ({ context }) => {
    const { findings, data, ceilings } = askBalance(context, gridOf(context.line.length));
    return { findings, data: { data, ceilings } };
  },
};
