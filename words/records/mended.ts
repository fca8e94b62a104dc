/** What is open, and that it is mended. */
import { shortHash } from './record.ts';

export const NOTHING_OPEN = 'Nothing is recorded as amiss and not mended.';

/** @param what was amiss @param hash of the record that says what was done */
export const tellMended = (of: string, what: string, hash: string): string =>
  `Mended: ${of}, ${what}. Recorded as ${shortHash(hash)}.`;
