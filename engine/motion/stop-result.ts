/** What is told of one stop. */
import type { Sampled } from './sample.ts';

/** A stop from a place and speed. */
export interface StopResult {
  readonly at: number;
  readonly speed: number;
  readonly likely: StopFigure;
  /** 99th percentile with its upper confidence bound. */
  readonly cautious: StopFigure;
  /** Sampling: n, 50/90/99 percentiles, upper 95 % confidence bound of the 99th. m */
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
