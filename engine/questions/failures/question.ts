/** What if one thing fails? */
import { balance } from '../balance/question.ts';
import type { Finding } from '../finding.ts';
import { part } from '../part/question.ts';
import type { Question } from '../question.ts';
import { speed } from '../speed/question.ts';
import { askFailures, type FailureRow } from './ask.ts';

export const singleFailures: Question<FailureRow[]> = {
  id: 'singleFailures',
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
    'following',
  ],
  codes: ['failure-runs-away', 'failure-rolls-back', 'failure-stops-late'],
  ask: ({ context, ready, of }) => {
    const { findings, data } = askFailures({
      context,
      caution: ready.caution(context.outing.conditions.railState),
      speeds: of(speed).data.running,
      bodies: of(balance).data.data,
    });
    return { findings: unlessParted(findings, of(part).findings), data };
  },
};

/** A hose that comes off leaves what a parting held by its chain leaves: said once. */
const unlessParted = (failures: readonly Finding[], parting: readonly Finding[]): Finding[] =>
  failures.filter(
    (f) =>
      f.facts['failure'] !== 'hose' ||
      !parting.some((p) => p.code.startsWith('held-train') && p.facts['outcome'] === f.facts['outcome']),
  );
