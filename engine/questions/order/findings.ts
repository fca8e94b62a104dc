/** What this question can find, and the kinds of the facts. */
import { inDateKinds } from '../../things/in-date.ts';

const asked: { readonly what: typeof inDateKinds; readonly of: 'name' } = { what: inDateKinds, of: 'name' };
const dated: typeof asked & { readonly 'last?': 'name' } = { ...asked, 'last?': 'name' };

export const orderFindings = {
  'out-of-date': dated as typeof dated,
  'not-shown': asked as typeof asked,
  'in-grace': dated as typeof dated,
  'defect-open': { what: 'name', of: 'name', since: 'name' },
} as const;
