/** Do the cars stay up and on the rails? */

import type { Question } from '../question.ts';
import { gridOf } from '../speed/map.ts';
import { askBalance, type BalanceAnswer } from './ask.ts';
import { balanceFindings } from './findings.ts';

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
    'restrictions',
    'plannedSpeed',
  ],
  findings: balanceFindings,
  ask: ({ context }) => {
    const { findings, data, ceilings } = askBalance(context, gridOf(context.line.length));
    return { findings, data: { data, ceilings } };
  },
};
