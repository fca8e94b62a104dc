/** What this question can find, and the kinds of the facts. */
import { inDateKinds } from '../../things/in-date.ts';

interface Asked {
  readonly what: typeof inDateKinds;
  readonly of: 'name';
}
const asked: Asked = { what: inDateKinds, of: 'name' };
const dated: Asked & { readonly 'last?': 'name' } = { ...asked, 'last?': 'name' };

export const orderFindings = {
  'out-of-date': dated as typeof dated,
  'not-shown': asked as Asked,
  'in-grace': dated as typeof dated,
  'defect-open': { what: 'name', of: 'name', since: 'name' },
} as const;
