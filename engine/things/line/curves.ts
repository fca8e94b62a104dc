/** Curves: radius and degree, cant, overturning, flange climb, twist. Outward and outer-rail-high are positive. */
import { GRAVITY } from '../../base/constants.ts';

/** Chord of the US degree of curve, m: 100 ft. */
export const DEGREE_CHORD = 30.48;

/**
 * Radius of a curve from its degree, m, by the chord definition: R = 50 ft/sin(D/2).
 * degree rad, 0 < D ≤ π. Source: Searles; railroad practice.
 */
export function radiusOfDegree(degree: number): number {
  return DEGREE_CHORD / 2 / Math.sin(degree / 2);
}

/** Degree of a curve from its radius, rad, by the chord definition; radius m ≥ 50 ft. */
export function degreeOfRadius(radius: number): number {
  return 2 * Math.asin(DEGREE_CHORD / 2 / radius);
}

/**
 * Radius from a chord and the versine (mid-ordinate) at its middle, m: R = c²/(8v) + v/2, exact.
 * chord m > 0 · versine m, 0 < v ≤ c/2.
 */
export function radiusFromVersine(chord: number, versine: number): number {
  return (chord * chord) / (8 * versine) + versine / 2;
}

/** Versine of a chord in a curve, m: v = R − √(R² − c²/4); radius ≥ c/2. */
export function versineOfRadius(chord: number, radius: number): number {
  const half = chord / 2;
  return (half * half) / (radius + Math.sqrt(radius * radius - half * half));
}

/**
 * Cant at which nothing pulls sideways, m: e = b·v²/(g·R).
 *
 * speed m/s · radius m > 0 · base b m between rail contacts. Taken as slope, as the trade does: at
 * v²/(gR) = 0.2 the true height is 2 % less. Source: 49 CFR 213 App. A, US Army TR0671 (same form).
 */
export function equilibriumCant(speed: number, radius: number, base: number): number {
  return (base * speed * speed) / (GRAVITY * radius);
}

/**
 * Curve speed from cant and cant deficiency, m/s: v = √(g·R·(e + d)/b).
 * radius m > 0 · base m > 0 · cant, deficiency m with e + d ≥ 0. Source: 49 CFR 213.57 (form).
 */
export function cantSpeed(radius: number, base: number, cant: number, deficiency: number): number {
  return Math.sqrt((GRAVITY * radius * (cant + deficiency)) / base);
}

/** Centrifugal force, N: m·v²/R. mass kg · speed m/s · radius m > 0. */
export function centrifugalForce(mass: number, speed: number, radius: number): number {
  return (mass * speed * speed) / radius;
}

/** Angle of the track across, rad, from cant: asin(e/b); |cant| ≤ base. */
export function cantAngle(cant: number, base: number): number {
  return Math.asin(cant / base);
}

/**
 * Speed at which a vehicle tips over the outer rail, m/s: v = √(g·R·tan(θ + φ)),
 * tan φ = (b/2 − y)/h, sin θ = e/b. Exact for a stiff body.
 *
 * radius R m > 0 · base b m between contact points · height h m of the centre of gravity > 0 ·
 * cant e m, outer rail high positive · lean y m, centre of gravity outward of the middle.
 * Returns 0 where it tips standing still, Infinity where no speed tips it outward (θ + φ ≥ 90°).
 * Source: moments about the outer contact; for e = y = 0 it is √(g·R·b/(2h)).
 */
export function overturningSpeed(radius: number, base: number, height: number, cant = 0, lean = 0): number {
  const angle = Math.atan2(base / 2 - lean, height) + cantAngle(cant, base);
  if (angle <= 0) return 0;
  if (angle >= Math.PI / 2) return Infinity;
  return Math.sqrt(GRAVITY * radius * Math.tan(angle));
}

/** One vehicle with people on it, standing or in a curve. Toward the inside of the curve is positive. */
export interface LeaningCar {
  /** kg, whole, and of the people who lean. */
  readonly mass: number;
  readonly people: number;
  /** Centre of gravity of the whole above the rail, m, > 0. */
  readonly height: number;
  /** Between rail contacts, m, > 0. */
  readonly base: number;
  /** Centre of gravity from the middle, m. */
  readonly offset: number;
  /** Outer rail high positive, m, |cant| ≤ base. */
  readonly cant: number;
  /** v²/R, m/s². */
  readonly sideways: number;
  /** Force of the wind at the centre of gravity ÷ weight; it blows the worse way. */
  readonly wind: number;
  /** Load of the lightest truck ÷ its even share, 1 where both carry alike. */
  readonly evenness: number;
  /** By how much springs make every sideways moment larger, ≥ 1. */
  readonly roll: number;
}

/**
 * How far the centre of gravity of the people may shift sideways before the first wheel lifts, m.
 *
 *   y = (M/m)·(ε·b/(2ρ) − |h·tan(θ − ψ) + o| − h·w/n)
 *   tan ψ = a/g, sin θ = e/b, n = cos θ + (a/g)·sin θ
 *
 * M mass of the whole, m of the people who lean, h height, b base, o offset, e cant, a sideways acceleration,
 * w wind, ε evenness, ρ roll. Toward the nearer side; negative: a wheel has lifted by so much already. Exact
 * for a stiff body on equal springs; jolts and rough track are left out. Source: moments about the rail
 * contact, as on a seesaw.
 */
export function leanToLift(car: LeaningCar): number {
  const { mass, people, height, base, offset, wind, evenness, roll } = car;
  const angle = cantAngle(car.cant, base);
  const share = car.sideways / GRAVITY;
  const normal = Math.cos(angle) + share * Math.sin(angle);
  const side = height * Math.tan(angle - Math.atan(share)) + offset;
  const spare = (evenness * base) / (2 * roll) - Math.abs(side) - (height * wind) / normal;
  return (mass * spare) / people;
}

/**
 * Height of the centre of gravity from a tilt test, m: h = (b/2 − y)/tan(angle).
 * angle rad at which the upper wheel just lifts, 0 < angle < π/2 · base m · offset y m of the centre of
 * gravity toward the lower side. Source: moments about the lower contact.
 */
export function centreHeightFromTilt(angle: number, base: number, offset = 0): number {
  return (base / 2 - offset) / Math.tan(angle);
}

/** Twist (warp) of track, m/m: difference of cant ÷ distance along. */
export function twist(difference: number, along: number): number {
  return difference / along;
}

/** Height by which one wheel stands off the plane of the others on twisted track, m. */
export function twistOverBase(trackTwist: number, wheelBase: number): number {
  return trackTwist * wheelBase;
}
