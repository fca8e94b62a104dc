/** What is told of hauling. */

export interface HaulResult {
  /** Worst place for starting: head chainage, m. */
  readonly startsAt: number;
  readonly startPull: number;
  readonly startNeed: number;
  /** Share of starts that fail there, given what was stated. */
  readonly startFails: number;
  /** Where one start in twenty or more fails, m. */
  readonly hardStretches: readonly { readonly from: number; readonly to: number; readonly fails: number }[];
  /** Speed kept up on the ruling grade but for one day in twenty, m/s; null: cannot tell; 0: stalls. */
  readonly balancingSpeed: number | null;
  readonly rulingAt: number;
}
