/** The records of this browser as they were looked at last. */
import { signal } from '@preact/signals';
import type { Clock } from '../../records/ledger.ts';
import type { Author } from '../../records/record.ts';
import type { Named } from '../../records/store.ts';
import { localTime } from '../../records/time.ts';
import type { Verified } from '../../records/verify.ts';
import { version } from './version.ts';

export interface Kept extends Verified {
  readonly names: readonly Named[];
  /** Who writes here; undefined: nobody has begun. */
  readonly me: Author | undefined;
}

/** Null until they have been looked at. */
export const kept = signal<Kept | null>(null);

export const clock: Clock = { now: () => localTime(new Date()), program: version };
