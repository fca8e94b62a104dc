/** Seating: who sits where, so that the car that is worst off is as well off as can be. */
import type { Quantity } from '../../base/quantity.ts';
import type { SeatedRider } from '../../things/train/loaded.ts';
import type { Rider } from '../../things/train/types.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';

/** A car with the people who do not move: driver, guard. */
export interface CarToFill {
  readonly vehicle: Vehicle;
  readonly fixed: readonly SeatedRider[];
}

export interface SeatingRules {
  readonly mostRidersPerCar?: number;
  /** Adults per axle. */
  readonly ridersPerAxle?: number;
  /** Where a held child sits: in front of the adult who holds it (common practice), or behind. */
  readonly heldChild: 'in-front' | 'behind';
}

export interface SeatingProblem {
  readonly cars: readonly CarToFill[];
  /** All who must be seated; those with a vehicle and seat sit there now. */
  readonly people: readonly Rider[];
  /** Between rail contacts, m. */
  readonly base: number;
  /** Centre of gravity of a seated adult above the seat. */
  readonly adultCentre: Quantity;
  /** Side acceleration that every car must bear, as a share of g. */
  readonly sideDemand: number;
  readonly rules: SeatingRules;
}

/** How well one car is loaded; 1 is perfectly even and still, 0 has a wheel in the air. */
export interface CarMargin {
  /** Lightest wheel at the side demand ÷ mean wheel load: the figure that is maximised. */
  readonly wheel: number;
  /** The same for both sides as a whole, and for the lightest truck without side demand. */
  readonly sideways: number;
  readonly trucks: number;
}

export interface Place {
  readonly rider: string;
  readonly vehicle: string;
  readonly seat: string;
}

export type Reason =
  | 'single-in-middle'
  | 'pair-over-trucks'
  | 'pair-about-middle'
  | 'child-ahead-of-adult'
  | 'even-over-trucks'
  | 'left-empty';

export interface SeatedCar {
  readonly vehicle: string;
  readonly margin: CarMargin;
  readonly reasons: readonly Reason[];
}

export interface Seating {
  readonly ok: true;
  readonly places: readonly Place[];
  readonly cars: readonly SeatedCar[];
  /** Margin of the worst car, and the most that any seating could reach. */
  readonly worst: number;
  readonly bound: number;
  /** The bound equals what was found: nothing better exists. */
  readonly proven: boolean;
  /** People who change seat, of those who had one. */
  readonly moved: readonly string[];
  /** Groups too large for one car. */
  readonly split: readonly string[];
}

export interface NoSeating {
  readonly ok: false;
  readonly why: 'too-few-seats' | 'rules' | 'solver';
}

/** A mixed-integer program as text in the common LP format, and what solving it gave. */
export type Solve = (program: string) => Solved;
export interface Solved {
  readonly status: 'optimal' | 'infeasible' | 'other';
  readonly values: ReadonlyMap<string, number>;
}
