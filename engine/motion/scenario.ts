/**
 * How unlucky a stop is: where in its spread each uncertain input sits.
 *
 * Each position runs from −1 (the unsafe bound: less adhesion, weaker brake, later reaction, slower
 * build-up, less resistance, more mass) over 0 (likely) to 1 (the safe bound).
 */
export interface Scenario {
  adhesion: number;
  /** Force of the blocks, and their friction. */
  brake: number;
  friction: number;
  reaction: number;
  timing: number;
  resistance: number;
  mass: number;
  /** Share of adhesion that a driver uses who eases and brakes anew. */
  easing: number;
  /** How soon he feels that wheels slide. */
  notice: number;
  skid: number;
  /** What wet blocks keep of their friction. */
  wet: number;
  /** The true grade against the surveyed one. */
  grade: number;
  /** Length of a bad spot that is met, m (0: none), and its adhesion. */
  spot: number;
  spotFactor: number;
}

/**
 * What stands for one stop in a hundred: whichever of these scenarios makes a stop longest tells it. The first says what fall
 * is held.
 */
export type Caution = readonly Scenario[];

export const likely: Scenario = {
  adhesion: 0,
  brake: 0,
  friction: 0,
  reaction: 0,
  timing: 0,
  resistance: 0,
  mass: 0,
  easing: 0,
  notice: 0,
  skid: 0,
  wet: 0,
  grade: 0,
  spot: 0,
  spotFactor: 0,
};

/** What each vehicle has for itself: positions of its brake force, rolling resistance and mass. */
export interface Own {
  readonly brake: Float64Array;
  readonly resistance: Float64Array;
  readonly mass: Float64Array;
}

/** All inputs moved the same share of the way to their unsafe bounds. @param share in [0, 1] */
export const unsafeBy = (share: number): Scenario => ({
  adhesion: -share,
  brake: -share,
  friction: -share,
  reaction: -share,
  timing: -share,
  resistance: -share,
  mass: -share,
  easing: -share,
  notice: -share,
  skid: -share,
  wet: -share,
  grade: -share,
  spot: 0,
  spotFactor: 0,
});
