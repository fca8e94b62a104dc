/**
 * What a question knows of the changes that may clear its findings: families of changes of growing size. They are
 * proposals only; the answer's room tries each on the whole outing.
 */
import type { Change } from '../outing/change.ts';
import type { Outing } from '../outing/types.ts';
import type { Finding } from './finding.ts';
import type { FindingCode } from './findings.ts';

/** Changes of growing size, each clearing no less than the one before; the first that clears is the smallest. */
export interface Family {
  /** Smaller is a smaller change; ordering only. */
  readonly size: number;
  readonly changes: readonly Change[];
}

/** Changes worth trying for a finding, by its code. */
export type Remedies = Readonly<
  Partial<Record<FindingCode, (outing: Outing, finding: Finding) => readonly Family[]>>
>;

export const none: Family = { size: 0, changes: [] };
