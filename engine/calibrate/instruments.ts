/** How well a club's instruments read, and what is taken of a thing before it was measured. Filled from `data/`. */
import type { Quantity } from '../base/quantity.ts';
import type { OutingContext } from '../outing/open.ts';
import type { AssumedValues } from '../things/assumed.ts';
import type { Vehicle } from '../things/vehicle/types.ts';
import { type Parameter, spreadOf } from './fit.ts';

/** Each is a spread about 0 (errors, in the unit of the reading or as a share of it) or about 1 (scales). */
export interface Instruments {
  /** A thumb on a stopwatch, s. */
  readonly stopwatch: Quantity;
  /** A tape or measuring wheel: true ÷ read. */
  readonly tape: Quantity;
  /** A distance read at a mark, m. */
  readonly mark: Quantity;
  /** Where a mark stands that is timed, or where satellites say that it was, m. */
  readonly place: Quantity;
  /** A spring balance: true ÷ read; and how well one pull is read, as a share of it. */
  readonly balance: Quantity;
  readonly pull: Quantity;
  /** Speedometer or phone: true ÷ read; and one reading, m/s. */
  readonly speedometer: Quantity;
  readonly speed: Quantity;
  /** Platform or bathroom scales: true ÷ read; and one reading, as a share. */
  readonly scales: Quantity;
  readonly weight: Quantity;
  /** Pressure or vacuum gauge: true ÷ read; and one reading, Pa. */
  readonly gauge: Quantity;
  readonly pressure: Quantity;
  /** A tilt read by a phone or a plumb line, rad. */
  readonly tilt: Quantity;
  /** Small lengths by rule or feeler, m. */
  readonly rule: Quantity;
  /** Two people do not see a signal at the same place: a share of the distance. */
  readonly eyes: Quantity;
  /** The centre of gravity lies to one side: a share of the width between contacts. */
  readonly aside: Quantity;
  /** Rise of a floor that looks level, m/m. */
  readonly floor: Quantity;
  /** Speed term of the rolling resistance, N/N per m/s. */
  readonly perSpeed: Quantity;
}

/** What a test stands in: the instruments, what is assumed, and the outing whose train and line it was made with. */
export interface Around {
  readonly instruments: Instruments;
  readonly assumed: AssumedValues;
  /** Absent: tests of one vehicle need none. */
  readonly outing?: OutingContext;
  /** The vehicle that was tested by itself. */
  readonly vehicle?: Vehicle;
}

export const errorOf = (q: Quantity): number => spreadOf(q);

/** Something not looked for that acts on all readings and may be half or twice what is likely. */
export const besides = (key: string, prior: Quantity): Parameter => ({
  key,
  prior,
  law: 'log',
  systematic: true,
});
/** A scale or an offset that all readings of an instrument share. */
export const sharedBy = (key: string, prior: Quantity): Parameter => ({
  key,
  prior,
  law: 'plain',
  systematic: true,
});
