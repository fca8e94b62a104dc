/** What this question can find, and the kinds of the facts. */
import { inDateKinds } from '../../things/in-date.ts';

export const orderFindings = {
  'out-of-date': { what: inDateKinds, of: 'name', 'last?': 'name' },
  'not-shown': { what: inDateKinds, of: 'name' },
  'in-grace': { what: inDateKinds, of: 'name', 'last?': 'name' },
  'defect-open': { what: 'name', of: 'name', since: 'name' },
} as const;
