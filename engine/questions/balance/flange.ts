/**
 * Flange climb. The leading outer wheel of a truck guides it: it takes all of the truck's sideways force,
 * and the friction with which the other wheel of its axle resists turning into the curve.
 *
 *   L = H + µ·V_other     climbs where  L/V > (tan δ − µ)/(1 + µ·tan δ)     (Nadal)
 *
 * H is the force of the truck toward that rail: curve, cant, and the couplings' sideways pull shared by the
 * lever rule. Taking all of H on one axle is on the safe side: the trailing axle holds some of it.
 */
import { GRAVITY } from '../../base/constants.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import type { Body } from './body.ts';
import { positionsOf } from './draws.ts';
import { PLAUSIBLE_FLANGE, UNLUCKY_FLANGE } from './limits.ts';
import type { Under } from './tipping.ts';

/**
 * Nadal's limit of flange climb, L/V: (tan δ − µ)/(1 + µ·tan δ) = tan(δ − atan µ).
 * flangeAngle δ rad, 0 < δ ≤ 90° · friction µ ≥ 0. Source: Nadal 1896; 49 CFR 213.333.
 */
export function nadalLimit(flangeAngle: number, friction: number): number {
  return Math.tan(flangeAngle - Math.atan(friction));
}

export interface FlangeShape {
  /** rad */
  readonly angle: number;
  readonly friction: number;
  /** Nadal's limit of L/V. */
  readonly limit: number;
  readonly angleKnown: boolean;
  readonly frictionKnown: boolean;
}

/** As stated; what nobody stated, angle, friction or both together, as one in a hundred would have it, or worse. */
export function flangeShape({ flange }: Vehicle): FlangeShape {
  const angleKnown = flange?.angle !== undefined;
  const frictionKnown = flange?.frictionHigh !== undefined;
  const share = frictionKnown ? UNLUCKY_FLANGE.angleAlone : UNLUCKY_FLANGE.together;
  const angle = flange?.angle ?? toward(PLAUSIBLE_FLANGE.angle, -share);
  const friction =
    flange?.frictionHigh ??
    toward(PLAUSIBLE_FLANGE.friction, angleKnown ? UNLUCKY_FLANGE.frictionAlone : share);
  return { angle, friction, limit: nadalLimit(angle, friction), angleKnown, frictionKnown };
}

/** A vehicle's flange by draw. */
export interface FlangeDraws {
  readonly angle: Float64Array;
  readonly friction: Float64Array;
  readonly limit: Float64Array;
}

/**
 * What nobody stated is drawn: the angle is each vehicle's own, the friction that of the rail and so the train's.
 *
 * @param index of the vehicle
 */
export function flangeDraws(known: FlangeShape, index: number): FlangeDraws {
  const { angleKnown, frictionKnown } = known;
  const [steep, rough] = [positionsOf(`flange ${index}`), positionsOf('flange on rail')];
  const angle = steep.map((p) => (angleKnown ? known.angle : toward(PLAUSIBLE_FLANGE.angle, p)));
  const friction = rough.map((p) => (frictionKnown ? known.friction : toward(PLAUSIBLE_FLANGE.friction, p)));
  const exact = angleKnown && frictionKnown;
  const limit = angle.map((a, i) => (exact ? known.limit : nadalLimit(a, friction[i])));
  return { angle, friction, limit };
}

/** @param share −1 the low bound, 1 the high one */
const toward = (
  { low, value, high }: { readonly low: number; readonly value: number; readonly high: number },
  share: number,
): number => value + share * (share < 0 ? value - low : high - value);

/** Sideways forces of the couplings on one vehicle, N to the left, at its two ends. */
export interface EndForces {
  readonly front: number;
  readonly rear: number;
}

/** What never changes along the line for one truck. */
export interface Truck {
  readonly body: Body;
  readonly group: number;
  readonly axles: number;
  /** Share of a force at the front and at the rear end that this truck takes. */
  readonly ofFront: number;
  readonly ofRear: number;
  /** Coupler heights, m. */
  readonly frontHeight: number;
  readonly rearHeight: number;
}

export function trucksOf(body: Body): Truck[] {
  const { vehicle } = body;
  const { groups } = vehicle;
  const low = Math.min(...vehicle.seats.map((s) => s.height), vehicle.gauge);
  return groups.map((g, group) => ({
    body,
    group,
    axles: g.axles,
    ofFront: leverShare(groups, group, 0),
    ofRear: leverShare(groups, group, vehicle.length),
    // A coupling whose height is not given is taken at the seats or as high as the gauge is wide.
    frontHeight: vehicle.front.height ?? low,
    rearHeight: vehicle.rear.height ?? low,
  }));
}

function leverShare(groups: readonly { readonly at: number }[], i: number, at: number): number {
  const last = groups.length - 1;
  if (last === 0) return 1;
  if (i !== 0 && i !== last) return 0;
  const rear = (at - groups[0].at) / (groups[last].at - groups[0].at);
  return i === 0 ? 1 - rear : rear;
}

export interface Guiding {
  /** Force of the truck toward the left rail, N. */
  left: number;
  /** Load of the axle's wheels, N. */
  onLeft: number;
  onRight: number;
}

const emptyGuiding = (): Guiding => ({ left: 0, onLeft: 0, onRight: 0 });

/**
 * @param lean moment m·y of leaning riders, kg·m to the left
 * @param into filled and returned: asked for each truck at each place, it must not make garbage
 */
export function guiding(
  truck: Truck,
  under: Under,
  speedSquared: number,
  ends: EndForces,
  lean = 0,
  into: Guiding = emptyGuiding(),
): Guiding {
  const { body, group, axles } = truck;
  const felt = speedSquared * under.curvature;
  const sin = Math.sin(under.cant);
  const cos = Math.cos(under.cant);
  const side = GRAVITY * sin - felt * cos;
  const normal = GRAVITY * cos + felt * sin;
  const couplings = ends.front * truck.frontHeight + ends.rear * truck.rearHeight;
  const roll = (body.Z * side + (body.Y + lean) * normal + couplings) * body.amplification;
  const half = (body.groupMass[group] * normal) / (2 * axles);
  const shift = (body.rollShare[group] * roll) / body.base / axles;
  into.left = body.groupMass[group] * side + truck.ofFront * ends.front + truck.ofRear * ends.rear;
  into.onLeft = half + shift;
  into.onRight = half - shift;
  return into;
}

/**
 * Worst L/V of the truck in a curve. The outer wheel guides and bears the other's friction; the inner one is
 * pressed only where the train is drawn inward harder than the curve throws it out, and friction then holds
 * it back. Infinity: a pressed wheel has lifted.
 */
export function climbing({ left, onLeft, onRight }: Guiding, curvature: number, friction: number): number {
  return curvature > 0 ? worse(-left, onRight, onLeft, friction) : worse(left, onLeft, onRight, friction);
}

const worse = (outward: number, outer: number, inner: number, friction: number): number =>
  Math.max(pressed(outward + friction * Math.max(0, inner), outer), pressed(-outward, inner));

const pressed = (force: number, load: number): number =>
  force <= 0 ? 0 : load > 0 ? force / load : Infinity;

/**
 * Speed at which the outer flange reaches a limit of L/V, m/s. The excess L − limit·V is linear in v², so
 * two values give it. 0: exceeded standing; Infinity: never.
 */
export function climbSpeed(
  truck: Truck,
  under: Under,
  ends: EndForces,
  { friction, limit }: FlangeShape,
  lean = 0,
): number {
  if (under.curvature === 0) return Infinity;
  const outward = under.curvature > 0 ? -1 : 1;
  const into = emptyGuiding();
  const standing = excess(guiding(truck, under, 0, ends, outward * lean, into), outward, friction, limit);
  const slope =
    excess(guiding(truck, under, 1, ends, outward * lean, into), outward, friction, limit) - standing;
  if (standing > 0) return 0;
  return slope > 0 ? Math.sqrt(-standing / slope) : Infinity;
}

function excess(
  { left, onLeft, onRight }: Guiding,
  outward: number,
  friction: number,
  limit: number,
): number {
  return outward > 0
    ? left + friction * onRight - limit * onLeft
    : -left + friction * onLeft - limit * onRight;
}
