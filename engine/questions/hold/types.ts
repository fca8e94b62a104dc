/** What is told of holding. */

export interface HoldResult {
  /** Steepest pull on the standing train, N, and where its head stands, m. */
  readonly pull: number;
  readonly at: number;
  /** Force of the brakes that do not leak off, N: by the driver alone, with a guard's brake, with every rider's. */
  readonly driver: number;
  readonly crew: number;
  readonly everybody: number;
  /** Force of all that driver and guard can put on, while it is tight, N. */
  readonly tight: number;
}
