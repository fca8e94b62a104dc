/** A wheelset as a calliper finds it. */
import type { Quantity } from '../../base/quantity.ts';

/** What was read of a wheelset on one day, the more worn of its two wheels, m. */
export interface WearReading {
  /** Days since 1970-01-01. */
  readonly day: number;
  readonly flangeThickness?: number;
  readonly flangeHeight?: number;
  readonly hollow?: number;
}

/** Two wheels on one axle, as a calliper finds them. What was not measured is absent. */
export interface Wheelset {
  readonly id: string;
  readonly name: string;
  /** Between the backs of the two wheels, m, at several places round them. */
  readonly backToBack?: readonly number[];
  /** Of the flange a little below the tread, m: both wheels, worn and new, lie between its bounds. */
  readonly flangeThickness?: Quantity;
  /** Of the flange below the tread, m: the deeper of the two wheels. */
  readonly flangeHeight?: number;
  /** How deep the tread is worn hollow, m: the deeper of the two. */
  readonly hollow?: number;
  /** How far the tread slopes toward its outer edge, rad: of the two wheels either. */
  readonly taper?: number;
  /** As read on earlier days. */
  readonly wear?: readonly WearReading[];
  /** Of its two wheels on the tread, m. */
  readonly diameters?: readonly number[];
  /** From back to outer face of one wheel, m: the narrower. */
  readonly width?: number;
}
