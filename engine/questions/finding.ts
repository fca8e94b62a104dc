/**
 * Findings: what the engine has to say, as data. Words for people live in `words/`.
 */
import type { Amount } from '../base/quantity.ts';
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

/**
 * How a finding's figure differs from its sum's.
 *
 * `even` reckoned along the line, the sum on one even grade · `margin` likewise, and a margin added · `rolling` less
 * rolling resistance, which helps to hold · `metres` at least so much, sought in whole metres · `edge` short of what
 * the sum gives, to leave wheels their load · `part` the sum gives a part of it
 */
export type SumDiffers = 'even' | 'margin' | 'rolling' | 'metres' | 'edge' | 'part';

/** The formula behind a finding: an id of the sums register and the SI inputs put in, as the engine used them. */
export interface SumRef {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number>>;
  /** Absent: the finding's figure is the sum's. */
  readonly differs?: SumDiffers;
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

/** A change to the outing. `applyChange` in engine/outing makes it; each is re-checked by running the engine. */
export type Change =
  | { readonly kind: 'fewer-cars'; readonly leave: readonly string[] }
  | { readonly kind: 'fewer-riders'; readonly leave: readonly string[] }
  | { readonly kind: 'slower'; readonly from: number; readonly to: number; readonly speed: number }
  | { readonly kind: 'slower-everywhere'; readonly speed: number }
  | { readonly kind: 'brake-car'; readonly vehicle: string; readonly like: string }
  | { readonly kind: 'rail-state'; readonly state: 'sanded' | 'dry' }
  | { readonly kind: 'order'; readonly order: readonly string[] }
  | { readonly kind: 'seat'; readonly moves: readonly { rider: string; vehicle: string; seat: string }[] }
  | { readonly kind: 'ballast'; readonly vehicle: string; readonly mass: number; readonly height: number }
  | { readonly kind: 'chains' }
  | {
      readonly kind: 'chain-size';
      readonly gap: number;
      readonly grade: 30 | 43 | 70 | 80;
      readonly size: number;
    }
  | { readonly kind: 'guard' }
  | { readonly kind: 'parking-brake'; readonly vehicle: string; readonly force: number }
  | { readonly kind: 'brake-kind'; readonly brake: 'automatic-air' | 'automatic-vacuum' | 'mechanical' }
  | { readonly kind: 'together'; readonly changes: readonly Change[] };

export interface Remedy {
  readonly change: Change;
  /** Smaller is a smaller change; ordering only. */
  readonly size: number;
  /** The finding is gone after the change, verified by a new run. */
  readonly clears: boolean;
  /** The whole outing's answer after the change. */
  readonly verdict: Verdict;
}
