/** Brakes without a pipe: a person's arm, the push of the coupler, a current that rises with a lag. */
import type { Quantity } from '../../base/quantity.ts';
import type { HandRigging, SurgeRigging } from '../vehicle/types.ts';

/**
 * Force of the blocks that a person's pull gives, N.
 *
 *   B = P·(2π·R/l)·i·η      without a screw: B = P·i·η
 *
 * P pull (N), R radius of the handwheel (m), l lead of the screw per turn (m), i lever ratio, η efficiency of
 * the whole (a screw alone seldom passes 0.4). Source: principle of work.
 */
export function handBlockForce(hand: HandRigging, pull: Quantity): Quantity {
  const { wheelRadius, screwLead, leverRatio, efficiency } = hand;
  const screw =
    wheelRadius !== undefined && screwLead !== undefined ? (2 * Math.PI * wheelRadius) / screwLead : 1;
  const at = (p: number, eta: number): number => p * screw * leverRatio * eta;
  return {
    value: at(pull.value, efficiency.value),
    low: at(pull.low, efficiency.low),
    high: at(pull.high, efficiency.high),
    how: pull.how,
  };
}

/**
 * Retarding force at the rail of a surge brake, N, for a vehicle that others ahead slow down.
 *
 *   m·a = F + P,  F = φ·η·i·(P − P₀)   →   P = (m·a + φ·η·i·P₀)/(1 + φ·η·i)
 *
 * m mass of the surge-braked vehicle and what pushes behind it (kg), a deceleration plus grade and less own
 * resistance, as m·a is the push it would make unbraked (m/s²), φ block friction, i lever ratio, η
 * efficiency, P₀ spring (N). Nothing where the push does not pass the spring: pulled or parted, it is off.
 */
export function surgeForce(
  surge: SurgeRigging,
  unbrakedPush: number,
  friction: number,
  efficiency: number,
): { readonly force: number; readonly push: number } {
  if (unbrakedPush <= surge.springForce) return { force: 0, push: Math.max(0, unbrakedPush) };
  const gain = friction * efficiency * surge.leverRatio;
  const push = (unbrakedPush + gain * surge.springForce) / (1 + gain);
  return { force: unbrakedPush - push, push };
}

/** Time until a first-order rise with a time constant reaches a share of its end, s: τ·ln(1/(1−share)). */
export const lagTime = (constant: number, share: number): number => -constant * Math.log(1 - share);
