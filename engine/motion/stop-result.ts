/** What is told of one stop. */
import type { Sampled } from './sample.ts';

/** A stop from a place and speed. */
export interface StopResult {
  readonly at: number;
  readonly speed: number;
  readonly likely: StopFigure;
  /** One stop in a hundred may be longer, given what was stated. */
  readonly cautious: StopFigure;
  /** Sampling: n, and 50th, 90th and 99th percentile. m */
  readonly sampled: Sampled;
}

export interface StopFigure {
  /** m; Infinity: does not stop. */
  readonly distance: number;
  /** s */
  readonly time: number;
  /** m from the decision to full brake. */
  readonly beforeFullBrake: number;
  /** Greatest speed on the way, m/s. */
  readonly topSpeed: number;
}
