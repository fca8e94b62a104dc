/** What helps where somebody's own papers are not in order: somebody else's that are. */
import type { Outing } from '../../outing/types.ts';
import { relievedOf } from '../crew/remedies.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

type OfHolder = Extract<Finding, { readonly facts: { readonly of: string } }>;

const relieved = (outing: Outing, finding: Finding): readonly Family[] =>
  relievedOf(outing, (finding as OfHolder).facts.of);

export const orderRemedies: Remedies = {
  'out-of-date': relieved,
  'not-shown': relieved,
  'not-signed-for-this': relieved,
};
