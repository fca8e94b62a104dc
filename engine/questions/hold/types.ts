/** What is told of holding. */

export interface HoldResult {
  /** Steepest pull on the standing train, N, and where its head stands, m. */
  readonly pull: number;
  readonly at: number;
  /** Force of the brakes that do not leak off, N. */
  readonly parking: number;
  /** Force of all brakes, N. */
  readonly all: number;
}
