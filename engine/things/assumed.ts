/** What stands in where a figure is not given. */
import type { Quantity } from '../base/quantity.ts';
import type { RailState } from './rail.ts';
import type { BlockMaterial, BrakeKind } from './vehicle/types.ts';

/** Figures that stand in where an outing's files give none; filled from `data/` by `papers/`. */
export interface AssumedValues {
  /** Wheel on rail, by rail state, N/N. */
  readonly adhesion: Readonly<Record<RailState, Quantity>>;
  /** Force of a locked wheel ÷ adhesion limit. */
  readonly slideFactor: Quantity;
  /** Curve drag = weight·c/R: c in m. */
  readonly curveConstant: Quantity;
  /** Block on wheel by speed (growing, m/s), linear between. */
  readonly blockFriction: Readonly<
    Record<BlockMaterial, readonly { readonly speed: number; readonly friction: Quantity }[]>
  >;
  /** s, by brake kind. */
  readonly deadTime: Readonly<Record<BrakeKind, Quantity>>;
  readonly buildUp: Readonly<Record<BrakeKind, Quantity>>;
  /** Starting resistance ÷ rolling resistance, from rest. */
  readonly startingFactor: Quantity;
  /** Centre of gravity of a seated rider above the seat, m. */
  readonly riderCentre: Quantity;
  /** Coupler free movement, m, and stiffness, N/m. */
  readonly couplerSlack: Quantity;
  readonly couplerStiffness: Quantity;
  /** Of a safety chain, N/m. */
  readonly chainStiffness: Quantity;
  /** Extra distance kept to whatever the train must stop short of, m. */
  readonly stopMargin: number;
}
