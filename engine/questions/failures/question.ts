/** What if one thing fails? */
import { balance } from '../balance/question.ts';
import type { Finding } from '../finding.ts';
import { part } from '../part/question.ts';
import type { Question } from '../question.ts';
import { speed } from '../speed/question.ts';
import { askFailures, type FailureRow } from './ask.ts';
import { failureFindings } from './findings.ts';

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
    'restrictions',
    'plannedSpeed',
    'following',
  ],
  findings: failureFindings,
  ask: ({ context, ready, of }) => {
    const { findings, data } = askFailures({
      context,
      careful: ready.careful,
      speeds: of(speed).data.running,
      bodies: of(balance).data.data,
    });
    return { findings: unlessParted(findings, of(part).findings), data };
  },
};

/** A hose that comes off leaves what a parting held by its chain leaves: said once. */
function unlessParted(failures: readonly Finding[], parting: readonly Finding[]): Finding[] {
  const held = parting.flatMap((p) =>
    p.code === 'held-train-runs-away' || p.code === 'held-train-rolls-back' ? [p.facts.outcome] : [],
  );
  return failures.filter(
    ({ facts }) =>
      !('failure' in facts && 'outcome' in facts) ||
      facts.failure !== 'hose' ||
      !held.includes(facts.outcome),
  );
}
