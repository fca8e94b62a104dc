/** What becomes of the two halves of a train that has parted. Chainages in the running direction, SI. */

/**
 * From harmless to worst. `stands`: comes to rest and stays. `rolls`: comes to rest, rolls off again and
 * ends on the line without meeting anything. The others: what it meets, and there the reckoning ends,
 * except at a place, which it rolls through.
 */
export const outcomes = [
  'stands',
  'rolls',
  'rolls-through-place',
  'meets-following',
  'runs-round',
  'leaves-line',
  'overturns',
] as const;

export type Outcome = (typeof outcomes)[number];

/** How one half moves from the parting to its end. */
export interface Roll {
  outcome: Outcome;
  /** Where the train's head would stand, were it whole: the half's own ends follow from `Part`. m, unwrapped. */
  at: number;
  /** s from the parting to rest, or to what it meets. */
  time: number;
  /** Greatest speed on the way, m/s, and the speed at the end. */
  topSpeed: number;
  endSpeed: number;
  /** Greatest speed once it has stood and rolled off again, m/s; 0: it stays where it first stands. */
  rollsOff: number;
  /** Least and greatest place on the way, m, unwrapped. */
  leastAt: number;
  mostAt: number;
  /** Index of the first place rolled through against the running direction; −1: none. */
  place: number;
  /** Speed there, m/s. */
  placeSpeed: number;
  /** Times that it came to rest and rolled off again. */
  turns: number;
  /** Barely over a summit, or barely held: another centimetre of survey may change where it ends. */
  nearBalance: boolean;
}

/** What else is on the line. */
export interface Traffic {
  /** Following train: s behind, and its speed, m/s; speed 0: none. */
  readonly followsAfter: number;
  readonly followsAt: number;
}

/** Samples of a roll, three numbers each: time s, place m (unwrapped), speed m/s (negative: backward). */
export type Path = number[];
