/**
 * Findings: what the engine has to say, as data. Words for people live in `words/`.
 */
import type { Amount } from '../base/quantity.ts';
import type { SumRef } from '../base/sum.ts';
import type { Change } from '../outing/change.ts';
import type { FactsOf, FindingCode } from './findings.ts';

/** From worst to least: forbids → hold, unknown → cannot tell, limits → go within limits. */
export type Severity = 'forbids' | 'unknown' | 'limits' | 'notes' | 'assumed';

export const severities: readonly Severity[] = ['forbids', 'unknown', 'limits', 'notes', 'assumed'];

export const isSeverity = (severity: string): severity is Severity =>
  severities.some((known) => known === severity);

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

/** A finding of one code: it and its facts go together. */
export interface FindingOf<C extends FindingCode> {
  readonly code: C;
  readonly severity: Severity;
  readonly question: Question;
  readonly where: Where;
  readonly found?: Amount;
  readonly required?: Amount;
  /** (allowed − found)/allowed or its like: positive is safe. */
  readonly margin?: number;
  /** Further facts that the words need, as the question's `findings.ts` says. */
  readonly facts: FactsOf<C>;
  readonly sum?: SumRef;
  /** Rule text, standard or "common practice, no source". */
  readonly source: string;
  /** How sure the weakest input is. */
  readonly sure: 'measured' | 'stated' | 'assumed';
  /** For `unknown`: what to measure, as a field path such as `vehicle.tare`. */
  readonly measure?: string;
  readonly remedies: readonly Remedy[];
}

/** Of any code; what is asked of its code tells its facts. */
export type Finding = { readonly [C in FindingCode]: FindingOf<C> }[FindingCode];

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
