/**
 * Findings: what the engine has to say, as data. Words for people live in `words/`.
 */
import type { Amount } from '../base/quantity.ts';
import type { SumRef } from '../base/sum.ts';
import type { Change } from '../outing/change.ts';
import type { FindingCode } from './codes.ts';

/** From worst to least: forbids → hold, unknown → cannot tell, limits → go within limits. */
export type Severity = 'forbids' | 'unknown' | 'limits' | 'notes' | 'assumed';

export type Verdict = 'go' | 'limits' | 'hold' | 'unknown';

export type Question =
  | 'hauling'
  | 'stopping'
  | 'holding'
  | 'spacing'
  | 'host'
  | 'practice'
  | 'parting'
  | 'balance'
  | 'brakes'
  | 'fit'
  | 'line'
  | 'assumptions';

export interface Where {
  readonly vehicle?: string;
  /** Gap behind the vehicle of this index. */
  readonly gap?: number;
  readonly place?: string;
  readonly from?: number;
  readonly to?: number;
}

export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly question: Question;
  readonly where: Where;
  readonly found?: Amount;
  readonly required?: Amount;
  /** (allowed − found)/allowed or its like: positive is safe. */
  readonly margin?: number;
  /** Further facts that the words need: amounts, names, counts. */
  readonly facts: Readonly<Record<string, Amount | string | number>>;
  readonly sum?: SumRef;
  /** Rule text, standard or "common practice, no source". */
  readonly source: string;
  /** How sure the weakest input is. */
  readonly sure: 'measured' | 'stated' | 'assumed';
  /** For `unknown`: what to measure, as a field path such as `vehicle.tare`. */
  readonly measure?: string;
  readonly remedies: readonly Remedy[];
}

export interface Remedy {
  readonly change: Change;
  /** Smaller is a smaller change; ordering only. */
  readonly size: number;
  /** The finding is gone after the change, verified by a new run. */
  readonly clears: boolean;
  /** The word after it is a better one; else it clears this and the word stays. */
  readonly betters: boolean;
  /** The whole outing's answer after the change. */
  readonly verdict: Verdict;
}
