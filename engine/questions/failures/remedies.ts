/** What helps a train that one failure lets go. */
import { keepTogether } from '../changes.ts';
import type { Remedies } from '../family.ts';

export const failuresRemedies: Remedies = {
  'failure-runs-away': keepTogether,
  'failure-rolls-back': keepTogether,
};
