/** A sum: one public formula with its symbols, units, range, equation and source. Words for people: words/sums.ts. */
import type { Kind } from './quantity.ts';

export interface SumSymbol {
  /** As written on a command line: `speed=7mph`. */
  readonly symbol: string;
  readonly kind: Kind;
  /** SI, inclusive unless `open`. */
  readonly low?: number;
  readonly high?: number;
  /** The low bound itself is out of range. */
  readonly open?: boolean;
  /** Taken where the symbol is left out, SI. */
  readonly default?: number;
  readonly whole?: boolean;
}

export interface SumResult {
  readonly symbol: string;
  readonly kind: Kind;
}

export interface SumProblem {
  readonly symbol: string;
  readonly found: string;
  readonly expected: string;
}

export type SumOutcome =
  | { readonly ok: true; readonly values: Readonly<Record<string, number>> }
  | { readonly ok: false; readonly problems: readonly SumProblem[] };

export type SumInputs = Readonly<Record<string, number>>;

export interface Sum {
  readonly id: string;
  readonly inputs: readonly SumSymbol[];
  readonly results: readonly SumResult[];
  /** Letters, figures and functions alone; parts with two blanks between them. */
  readonly equation: string;
  /** Each letter of it and what it is, `v speed, g gravity`; `V speed in mph` where not in SI. See sums/letters.ts. */
  readonly letters: string;
  /** What the equation leaves to words. */
  readonly remark?: string;
  readonly source: string;
  /** Values in result order; a problem where the inputs together are out of range. */
  readonly compute: (inputs: SumInputs) => readonly number[] | SumProblem;
}

export const input = (
  symbol: string,
  kind: Kind,
  range: Omit<SumSymbol, 'symbol' | 'kind'> = {},
): SumSymbol => ({ symbol, kind, ...range });
export const result = (symbol: string, kind: Kind): SumResult => ({ symbol, kind });
/** Range of a quantity that must be more than nothing. */
export const positive = { low: 0, open: true } as const;
export const notNegative = { low: 0 } as const;

/**
 * How a finding's figure differs from its sum's.
 *
 * `even` reckoned along the line, the sum on one even grade · `margin` likewise, and a margin added · `rolling` less
 * rolling resistance, which helps to hold · `metres` at least so much, sought in whole metres · `edge` short of what
 * the sum gives, to leave wheels their load · `part` the sum gives a part of it
 * `throughout` the sum in one curve throughout · `play` the play of the flanges added
 */
export type SumDiffers = 'even' | 'margin' | 'rolling' | 'metres' | 'edge' | 'part' | 'throughout' | 'play';

/** The formula behind a finding: an id of the sums register and the SI inputs put in, as the engine used them. */
export interface SumRef {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number>>;
  /** Absent: the finding's figure is the sum's. */
  readonly differs?: SumDiffers;
}
