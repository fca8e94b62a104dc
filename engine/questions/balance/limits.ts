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

/** Sideways shift of a seated adult's centre of gravity that must be reckoned with, m: 6 in. */
export const USUAL_LEAN: Limit = { value: 0.1524, source: 'common practice, no source' };

interface Bounds {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/**
 * Flanges that people run, rad, and their friction on the rail, likely between bounds: taken only to clear a
 * vehicle whose flange nobody measured, or to ask for it. 60° to 75° on transit systems, 80° as drawn by the
 * hobby's wheel standard; friction from a greased rail to dry, clean steel.
 */
export const PLAUSIBLE_FLANGE: {
  readonly angle: Bounds;
  readonly friction: Bounds;
  readonly source: string;
} = {
  angle: { low: (60 * Math.PI) / 180, value: (70 * Math.PI) / 180, high: (80 * Math.PI) / 180 },
  friction: { low: 0.2, value: 0.35, high: 0.5 },
  source: 'flanges of 60° to 80° and friction of 0.2 to 0.5: transit practice and a hobby wheel standard',
};

/**
 * Share of the way to the unsafe bounds that one such flange in a hundred lies beyond: of angle and friction
 * together, and of either alone where the other is stated. Drawn from triangles between the bounds.
 */
export const UNLUCKY_FLANGE = { together: 0.66, angleAlone: 0.86, frictionAlone: 0.86 } as const;

/** Twist of the poorest track that a published class allows, m/m: 3 in in 62 ft. */
export const POOREST_TWIST: Limit = { value: 3 / (62 * 12), source: '49 CFR 213.63, class 1' };

/** Lightest truck ÷ even share below which a car is unevenly loaded lengthwise. */
export const UNEVEN_TRUCKS: Limit = { value: 0.5, source: 'common practice, no source' };
