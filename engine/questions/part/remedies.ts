/** What keeps a train together, or its tail standing, when it parts. */

import type { Outing } from '../../outing/types.ts';
import { keepTogether, slowerEverywhere } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

/** Slower, a tail has less in it: where the fall is short it stands before the curve, or before what it would meet. */
const keptOrSlower = (outing: Outing, finding: Finding): Family[] => [
  ...keepTogether(outing, finding),
  slowerEverywhere(outing),
];

export const partRemedies: Remedies = {
  'held-train-runs-away': keptOrSlower,
  'held-train-rolls-back': keptOrSlower,
  'tail-runs-away': keptOrSlower,
  'tail-rolls-back': keptOrSlower,
};
