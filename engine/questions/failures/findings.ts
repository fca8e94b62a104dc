import { assumptionFindings } from '../assumptions/findings.ts';
import { rollFacts } from '../part/findings.ts';

const roll: typeof rollFacts & { readonly failure: 'failure'; readonly lost: 'name' } = {
  ...rollFacts,
  failure: 'failure',
  lost: 'name',
};

/** What this question can find, and the kinds of the facts. */
export const failureFindings = {
  assumed: assumptionFindings.assumed as typeof assumptionFindings.assumed,
  'failure-runs-away': roll as typeof roll,
  'failure-rolls-back': roll as typeof roll,
  'failure-stops-late': { failure: 'failure', speed: 'speed' },
} as const;
