/** How a room of questions hands in its part of the answer. */

import type { Finding } from './finding.ts';
import type { SpeedReason } from './speed/types.ts';

export interface Findings<T> {
  readonly findings: readonly Finding[];
  readonly data: T;
}

/** A speed that a reason allows, by chainage of the train's head, on the grid of the speed map. */
export interface Ceiling {
  readonly reason: SpeedReason;
  /** m/s per grid point; Infinity where this reason does not bind. */
  readonly speed: Float64Array;
}
