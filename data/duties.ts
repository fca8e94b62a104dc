/** Duties to report an incident, as laws print them: examples with their sources, none of them advice. */
import rows from './duties.json' with { type: 'json' };

export interface Duty {
  readonly id: string;
  readonly country: string;
  /** Which places the law speaks of. */
  readonly where: string;
  /** Kinds of incident that it may be about. */
  readonly kinds: readonly string[];
  /** How badly somebody was hurt, for it to be about that; absent: whatever came of it. */
  readonly hurt?: readonly string[];
  readonly says: string;
  readonly deadline: string;
  readonly source: string;
}

export const duties: readonly Duty[] = rows.rows;
