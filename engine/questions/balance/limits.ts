/**
 * What forbids and what limits where the host has no rule of its own. Each with its source; see
 * docs/balance.md for why.
 */

export interface Limit {
  readonly value: number;
  readonly source: string;
}

/** Least load of a wheel in a curve as a share of its own load standing level. */
export const LEAST_WHEEL_SHARE: Limit = {
  value: 0.6,
  source: '49 CFR 213.57(d): no wheel below 60 % of its static load (full-size practice, taken over)',
};

/** Most load that a wheel may lose to twist, or to riders who sit to one side: ΔQ/Q. */
export const MOST_UNLOADING: Limit = {
  value: 0.6,
  source: 'EN 14363: wheel unloading at most 0.6 on twisted track (from memory)',
};

/** Sideways shift of a seated adult's centre of gravity that must be reckoned with, m. */
export const USUAL_LEAN: Limit = { value: 0.15, source: 'common practice, no source' };

/** Friction of flange on rail where the vehicle's file gives none: dry, clean steel. */
export const FLANGE_FRICTION: Limit = {
  value: 0.5,
  source: 'dry rail, as in the usual table of Nadal limits',
};

/** Shallowest flange that anyone would run; used only to clear what even it would bear, rad. */
export const SHALLOWEST_FLANGE: Limit = {
  value: (60 * Math.PI) / 180,
  source: 'common practice, no source',
};

/** Twist of the poorest track that a published class allows, m/m: 3 in in 62 ft. */
export const POOREST_TWIST: Limit = { value: 3 / (62 * 12), source: '49 CFR 213.63, class 1' };

/** Lightest truck ÷ even share below which a car is unevenly loaded lengthwise. */
export const UNEVEN_TRUCKS: Limit = { value: 0.5, source: 'common practice, no source' };
