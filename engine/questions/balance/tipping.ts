/**
 * Sideways: how much a vehicle bears before a wheel lifts and before it goes over, and the speed in a curve
 * that follows.
 *
 * With a felt sideways acceleration a toward one side and n onto the rails, the wheels of the other side
 * keep the share
 *
 *   q/q₀ = n/g − β·a/g      β = max over groups of (σ_i·Z/b)/(n_i/2 ∓ σ_i·Y/b)
 *
 * of the load they have standing level (upper sign toward the left). A wheel lifts at share 0; the whole
 * vehicle goes over where the same sum over all groups together reaches 0.
 */
import { GRAVITY } from '../../base/constants.ts';
import { type Body, leaning, raised, withPoint } from './body.ts';

/** Loss of wheel load per g of side acceleration, toward each side. Infinity: tips standing level. */
export interface Tip {
  readonly left: number;
  readonly right: number;
}

/** Toward the first wheel's lifting. */
export function liftOf(body: Body): Tip {
  const side = (sign: 1 | -1): number =>
    body.groupMass.reduce((worst, mass, i) => Math.max(worst, beta(body, mass, body.rollShare[i], sign)), 0);
  return { left: side(1), right: side(-1) };
}

/** Toward overturning: all wheels of one side together. */
export const overturnOf = (body: Body): Tip => ({
  left: beta(body, body.mass, 1, 1),
  right: beta(body, body.mass, 1, -1),
});

function beta({ Z, Y, base, amplification }: Body, mass: number, share: number, sign: 1 | -1): number {
  if (amplification === Infinity) return Infinity;
  const standing = mass / 2 - (sign * share * Y * amplification) / base;
  return standing > 0 ? (share * Z * amplification) / base / standing : Infinity;
}

/** Track under a vehicle: curvature (1/m, left positive) and the angle of its cant (rad, right rail high). */
export interface Under {
  readonly curvature: number;
  readonly cant: number;
}

/**
 * Speed at which the outer tilt leaves a given share of the inner wheels' load, m/s.
 *
 *   v² = g·[cos θ + β·(sin θ − w) − q]/(κ·(β·cos θ − sin θ))
 *
 * κ curvature, θ cant helping the curve, w wind as a share of g, q the share to be left. 0 where it is not
 * left even standing; Infinity where no speed takes it.
 */
export function speedLeaving(tip: Tip, { curvature, cant }: Under, share: number, wind = 0): number {
  const helps = curvature >= 0 ? cant : -cant;
  return speedOutward(curvature >= 0 ? tip.right : tip.left, Math.abs(curvature), helps, share, wind);
}

export function speedOutward(
  tip: number,
  curvature: number,
  cant: number,
  share: number,
  wind: number,
): number {
  if (tip === Infinity) return 0;
  const sin = Math.sin(cant);
  const cos = Math.cos(cant);
  const spare = cos + tip * (sin - wind) - share;
  if (spare < 0) return 0;
  const taken = curvature * (tip * cos - sin);
  return taken > 0 ? Math.sqrt((GRAVITY * spare) / taken) : Infinity;
}

/**
 * Share of standing load left on the lighter side at a speed; wind blows the worse way.
 * @param drawn moment of the couplings to the left ÷ (g·Z): the side acceleration, in g, that would do the same
 */
export function shareAt(tip: Tip, { curvature, cant }: Under, speed: number, wind = 0, drawn = 0): number {
  const felt = (speed * speed * curvature) / GRAVITY;
  const side = Math.sin(cant) - felt * Math.cos(cant) + drawn;
  const normal = Math.cos(cant) + felt * Math.sin(cant);
  return normal - Math.max(loss(tip.left, side + wind), loss(tip.right, wind - side));
}

const loss = (tip: number, side: number): number => (side > 0 ? tip * side : tip === Infinity ? Infinity : 0);

/**
 * How far a moment m·y (kg·m) may shift sideways before a wheel lifts, in the motion of a place and speed:
 * the lesser of the two sides; negative where one has lifted already.
 */
export function momentToLift(body: Body, under: Under, speed: number, whole = false, wind = 0): number {
  const felt = (speed * speed * under.curvature) / GRAVITY;
  const side = Math.sin(under.cant) - felt * Math.cos(under.cant);
  const normal = Math.cos(under.cant) + felt * Math.sin(under.cant);
  if (body.amplification === Infinity) return -Infinity;
  const used = Math.abs(body.Z * side + body.Y * normal) + body.Z * wind;
  const bears = whole
    ? (body.mass / 2) * normal
    : Math.min(...body.groupMass.map((m, i) => (m * normal) / 2 / body.rollShare[i]));
  return ((bears * body.base) / body.amplification - used) / normal;
}

/** Leans that lift the first wheel, m of a centre of gravity: worst rider alone, two worst, all together. */
export interface Leans {
  readonly one?: number;
  readonly two?: number;
  readonly all?: number;
}

export function leans(
  body: Body,
  riderMasses: readonly number[],
  under: Under,
  speed: number,
  whole = false,
  wind = 0,
): Leans {
  const moment = momentToLift(body, under, speed, whole, wind);
  const heavy = [...riderMasses].sort((a, b) => b - a);
  const total = heavy.reduce((sum, m) => sum + m, 0);
  return {
    ...(heavy.length >= 1 ? { one: moment / heavy[0] } : {}),
    ...(heavy.length >= 2 ? { two: moment / (heavy[0] + heavy[1]) } : {}),
    ...(heavy.length >= 1 ? { all: moment / total } : {}),
  };
}

/** Speed at which a wheel lifts when riders of that mass lean outward by y, m/s. */
export function speedWhileLeaning(body: Body, mass: number, lean: number, under: Under, wind = 0): number {
  const outward = under.curvature >= 0 ? -1 : 1;
  return speedLeaving(liftOf(leaning(body, outward * mass * lean)), under, 0, wind);
}

/**
 * Ballast at a height that leaves the wheels a wanted share in a curve at a speed, kg; undefined where no
 * amount does (it lies too high) up to ten times the body's mass.
 * @param wind moment of the wind ÷ (g·Z) of the body as it is; the moment itself stays what it is
 */
export function ballastFor(
  body: Body,
  height: number,
  under: Under,
  speed: number,
  share: number,
  wind = 0,
): number | undefined {
  const at = body.vehicle.length / 2;
  const left = (mass: number): number =>
    shareOf(withPoint(body, { mass, at, across: 0, height }), under, speed, wind * body.Z) - share;
  return leastThat(left, body.mass * 10);
}

/** How much lower all seats must be for that, m; undefined where even riders at the rail would not do. */
export function lowerSeatsFor(
  body: Body,
  riderMass: number,
  under: Under,
  speed: number,
  share: number,
  wind = 0,
): number | undefined {
  if (riderMass <= 0) return undefined;
  const left = (drop: number): number =>
    shareOf(raised(body, -riderMass * drop), under, speed, wind * body.Z) - share;
  return leastThat(left, body.Z / riderMass);
}

/** @param gale moment of the wind ÷ g, kg·m */
const shareOf = (body: Body, under: Under, speed: number, gale: number): number =>
  shareAt(liftOf(body), under, speed, gale / body.Z);

/** Least x in [0, most] with f(x) ≥ 0, f changing its sign once; by halving to one part in 2⁵⁰. */
function leastThat(f: (x: number) => number, most: number): number | undefined {
  if (f(0) >= 0) return 0;
  if (f(most) < 0) return undefined;
  let [low, high] = [0, most];
  for (let n = 0; n < 50; n++) {
    const middle = (low + high) / 2;
    if (f(middle) >= 0) high = middle;
    else low = middle;
  }
  return high;
}
