/** What is told of hauling. */

export interface HaulResult {
  /** Worst place for starting: head chainage, m. */
  readonly startsAt: number;
  readonly startPull: number;
  readonly startNeed: number;
  /** Speed kept up on the ruling grade, m/s; null: cannot tell; 0: stalls. */
  readonly balancingSpeed: number | null;
  readonly rulingAt: number;
}
