/** A train: vehicles in order, front first, and the people on them. */
import type { Quantity } from '../../base/quantity.ts';
import type { Vehicle } from '../vehicle/types.ts';

export interface Train {
  readonly name: string;
  /** Front first in the forward direction. Ids are unique within the train. */
  readonly vehicles: readonly Vehicle[];
  /** Pipe joined through the whole train; a break between vehicles i and i+1 lists i. */
  readonly pipeBrokenAfter: readonly number[];
  /** Chains are fastened at every gap; absent: nobody said so, and none is counted on. */
  readonly chainsFastened?: boolean;
}

/** A person on a seat. */
export interface Rider {
  readonly id: string;
  readonly name: string;
  readonly mass: Quantity;
  readonly ageGroup: 'adult' | 'youth' | 'child';
  /** Age in years; of an infant a part of one. */
  readonly age?: number;
  /** Vehicle id; absent: not yet seated. */
  readonly vehicle?: string;
  readonly seat?: string;
  readonly duty: 'rider' | 'driver' | 'guard';
  /** Keeps together with riders of the same group. */
  readonly group?: string;
  /** Id of the adult who holds this child: before the seat of its own, or on the lap where both have one seat. */
  readonly heldBy?: string;
}
