/** A train of some number of cars as the counts look at it, and what they find. */

import type { Prepared } from '../motion/prepare.ts';
import type { Caution } from '../motion/scenario.ts';
import type { OutingContext } from '../outing/open.ts';
import type { Ceiling } from '../questions/question.ts';
import type { RailState } from '../things/rail.ts';
import type { CountLimit } from './types.ts';

/** Where it fails most; undefined: nowhere. */
export type Fails = CountLimit | 'unknown' | undefined;

/** A train of some number of cars, ready to be asked. */
export interface Looked {
  /** Before its brakes are timed, which long pipes make dear: enough for starting and parking. */
  readonly plain: OutingContext;
  readonly ready: () => Prepared;
  /** With the brakes as late and as weak as those of a longer train: what does so does in its own time too. */
  readonly late: () => Prepared | undefined;
  readonly grid: Float64Array;
  /** Of host, places, vehicles and balance. */
  readonly ceilings: readonly Ceiling[];
  readonly cautionOf: (state: RailState) => Caution;
  /** The outing's own train: looked at as closely as the verdict does. */
  readonly own: boolean;
}
