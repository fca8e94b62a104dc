/**
 * Twist: track out of true, or a frame out of square, takes load off one wheel and its diagonal partner.
 *
 * Over a distance L track of twist τ lifts one corner by δ = τ·L. Of four equal corners of stiffness K each
 * then changes by
 *
 *   ΔQ = K·δ/4      so with a load Q per corner  ΔQ/Q = K·δ/(4·Q)
 *
 * and the corner lifts at δ₀ = 4·Q/K. Where δ₀ was measured with blocks under one wheel, ΔQ/Q = δ/δ₀: the
 * straight line between, which for gear that moves freely and then stops is on the safe side.
 */
import { twistOverBase } from '../../things/line/curves.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import { MOST_UNLOADING } from './limits.ts';

export interface TwistCheck {
  /** Over what: trucks apart, or the axles of a rigid pair, m. */
  readonly over: number;
  /** Height by which one corner stands off the plane of the others, m: track and frame together. */
  readonly lift: number;
  /** Height that takes a corner's whole load, m. */
  readonly freedom: number;
  /** ΔQ/Q: 1 and more: a wheel hangs in the air. */
  readonly unloading: number;
  readonly margin: number;
}

/** Distance over which a vehicle feels twist, m: its outer groups apart, or its only group's wheel base. */
export function twistBase(vehicle: Vehicle): number {
  const { groups } = vehicle;
  return groups.length > 1 ? groups[groups.length - 1].at - groups[0].at : groups[0].wheelBase;
}

/**
 * Height of one wheel that takes all its load, m: measured, or from the stiffness of the springs and the
 * least load of a wheel (N). Undefined where neither is known.
 */
export function twistFreedom(vehicle: Vehicle, leastWheelLoad: number): number | undefined {
  const { suspension } = vehicle;
  if (suspension?.twistFreedom !== undefined) return suspension.twistFreedom;
  const stiffness = suspension?.wheelStiffness?.high;
  if (stiffness === undefined || stiffness <= 0) return undefined;
  // A corner is one side of a truck: its springs and its loads are both as many as the truck has axles.
  return (4 * leastWheelLoad) / stiffness;
}

/** @param trackTwist m/m @param leastWheelLoad N, standing level */
export function checkTwist(
  vehicle: Vehicle,
  trackTwist: number,
  leastWheelLoad: number,
): TwistCheck | undefined {
  const freedom = twistFreedom(vehicle, leastWheelLoad);
  if (freedom === undefined || freedom <= 0) return undefined;
  const over = twistBase(vehicle);
  const lift = twistOverBase(Math.abs(trackTwist), over) + Math.abs(vehicle.suspension?.frameTwist ?? 0);
  const unloading = lift / freedom;
  return { over, lift, freedom, unloading, margin: 1 - unloading / MOST_UNLOADING.value };
}

/** What the block test found: a block of known height was put under one wheel of the standing vehicle. */
export interface BlockTest {
  /** m */
  readonly block: number;
  /** Another wheel could be turned by hand, or paper pulled from under it. */
  readonly otherWheelLifted: boolean;
  /** Load of the lightest other wheel before and with the block, N, where a scale was at hand. */
  readonly before?: number;
  readonly with?: number;
}

export interface BlockJudgement {
  readonly accepted: boolean;
  readonly why: 'lifts' | 'unloads' | 'block-too-low' | 'block-too-high' | 'stays' | 'stays-loaded';
  /** Height that the block must have had for the track at hand, m. */
  readonly needed: number;
  /** ΔQ/Q measured at the block, or brought to the needed height along a straight line. */
  readonly unloading?: number;
}

/**
 * Accept or reject for a track of the given twist.
 *
 * Without a scale the block must stand for a wheel that keeps 40 % of its load on the real track: it is
 * 1/0.6 of the track's and the frame's own lift, and no other wheel may lift. With a scale ΔQ/Q itself is
 * judged, at a block at least as high as the track's lift. A frame twist was there during the test: it is
 * not added again.
 */
export function judgeBlock(vehicle: Vehicle, trackTwist: number, test: BlockTest): BlockJudgement {
  const lift = twistOverBase(Math.abs(trackTwist), twistBase(vehicle));
  const weighed = test.before !== undefined && test.with !== undefined && test.before > 0;
  const needed = weighed ? lift : lift / MOST_UNLOADING.value;
  if (test.otherWheelLifted && test.block <= needed * (1 + 1e-9)) {
    return { accepted: false, why: 'lifts', needed };
  }
  if (weighed && test.block > 0) {
    const found = 1 - (test.with as number) / (test.before as number);
    const unloading = test.block > lift ? found * (lift / test.block) : found;
    if (unloading > MOST_UNLOADING.value) return { accepted: false, why: 'unloads', needed, unloading };
    if (test.block < lift * (1 - 1e-9)) return { accepted: false, why: 'block-too-low', needed, unloading };
    return { accepted: true, why: 'stays-loaded', needed, unloading };
  }
  if (test.block < needed * (1 - 1e-9)) return { accepted: false, why: 'block-too-low', needed };
  return test.otherWheelLifted
    ? { accepted: false, why: 'block-too-high', needed }
    : { accepted: true, why: 'stays', needed };
}
