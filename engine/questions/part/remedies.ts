/** What keeps a train together, or its tail standing, when it parts. */
import { keepTogether } from '../changes.ts';
import type { Remedies } from '../family.ts';

export const partRemedies: Remedies = {
  'held-train-runs-away': keepTogether,
  'held-train-rolls-back': keepTogether,
  'tail-runs-away': keepTogether,
  'tail-rolls-back': keepTogether,
};
