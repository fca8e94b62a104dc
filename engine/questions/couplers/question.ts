/** Do the couplings bear it, and what do their peaks do in curves? */
import { balance } from '../balance/question.ts';
import type { Finding } from '../finding.ts';
import type { Question } from '../question.ts';
import { askCouplers, type CouplerData } from './ask.ts';
import { couplerFindings } from './findings.ts';

export const couplers: Question<CouplerData> = {
  id: 'couplers',
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
  findings: couplerFindings,
  ask: ({ context, ready, care, of }) => {
    const steady = of(balance);
    const { findings, data } = askCouplers(context, ready.brakes.groups, steady.data.data, care.couplerRuns);
    return { findings: withoutSaid(findings, steady.findings), data };
  },
};

/** What is wrong with steady forces is wrong with their peaks too, and said once. */
const withoutSaid = (peaks: readonly Finding[], steady: readonly Finding[]): Finding[] =>
  peaks.filter(
    (p) =>
      !steady.some(
        (f) =>
          f.code === p.code && f.where.vehicle === p.where.vehicle && !('bears' in f.facts && f.facts.bears),
      ),
  );
