/** What is told of wheels along the line. */

/** How light the train's lightest wheel runs, by chainage of the train's head, on the grid of the speeds. */
export interface WheelMap {
  readonly at: Float64Array;
  /** Share of its load standing level left, at the host's or planned speed held to what balance allows. */
  readonly share: Float64Array;
  /** Vehicle that the wheel is under, −1: none whose centre of gravity is bounded. */
  readonly by: Int16Array;
  /** Least share allowed. */
  readonly required: number;
  /** Vehicles left out: nothing bounds their centre of gravity. */
  readonly unknown: readonly number[];
}
