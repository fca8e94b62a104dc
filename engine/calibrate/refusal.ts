/**
 * Why nothing was made of a test: codes with their facts; the sentences stand in `words/measured`. Nothing is fitted
 * silently to readings that cannot be right.
 */
import type { Kind } from '../base/quantity.ts';
import type { UnitSlip } from './bad-reading.ts';

export interface RefusalFacts {
  'too-few-readings': { readonly found: number; readonly needed: number };
  /** Times or distances that do not go on: the reading of this number, from 1. */
  'runs-backwards': { readonly reading: number };
  /** It gains speed that the fall of the line does not give. */
  'coast-speeds-up': { readonly reading: number };
  /** Readings contradict each other and none alone is to blame. */
  'readings-disagree': {
    readonly reading: number;
    readonly found: number;
    readonly expected: number;
    readonly kind: Kind;
    readonly slip?: UnitSlip;
  };
  /** They scatter so many times as much as their errors say. */
  'does-not-fit': { readonly times: number };
  'no-fit': Record<never, never>;
  /** Another run would tell: of `further`. */
  'not-told-apart': { readonly keys: readonly string[]; readonly further?: Further };
  /** A figure that cannot be: its field, and between what it must lie. */
  'out-of-range': {
    readonly field: string;
    readonly found: number;
    readonly low: number;
    readonly high: number;
  };
  /** What the test needs to know and nobody has said. */
  'not-stated': { readonly field: string };
  /** No brake of the vehicle has that name. */
  'no-such-brake': { readonly found: string; readonly has: readonly string[] };
  'upside-down': { readonly angle: number };
  /** A side stop so high holds the vehicle up. */
  'stop-too-high': { readonly found: number; readonly most: number };
}

/** Which further run tells apart what this one does not. */
export type Further =
  | 'other-way'
  | 'more-speeds'
  | 'longer'
  | 'curve-and-straight'
  | 'other-load'
  | 'one-brake'
  | 'more-readings';

export type RefusalCode = keyof RefusalFacts;

export type RefusalOf<C extends RefusalCode> = {
  readonly ok: false;
  readonly code: C;
  readonly facts: RefusalFacts[C];
};
export type Refusal = { readonly [C in RefusalCode]: RefusalOf<C> }[RefusalCode];

export const refuse = <C extends RefusalCode>(code: C, facts: RefusalFacts[C]): Refusal =>
  ({ ok: false, code, facts }) as Refusal;
