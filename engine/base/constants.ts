/** Physical constants of the engine, each by definition or with its source. */

/** Standard gravity, m/s² (by definition, CGPM 1901). */
export const GRAVITY = 9.80665;

/** Standard atmosphere at sea level, Pa (by definition; US Standard Atmosphere 1976). */
export const STANDARD_ATMOSPHERE = 101_325;

/** Molar gas constant of dry air per mass, J/(kg·K): 8.31432/0.0289644 (US Standard Atmosphere 1976). */
export const AIR_GAS_CONSTANT: number = 8.31432 / 0.0289644;

/** Ratio of specific heats of air (handbook value). */
export const AIR_GAMMA = 1.4;

/** Air at sea level and 15 °C, kg/m³ (US Standard Atmosphere 1976). */
export const AIR_DENSITY = 1.225;

/** International foot, m (by definition, 1959), and what follows from it. */
export const FOOT = 0.3048;
export const INCH: number = FOOT / 12;
export const MPH: number = (5280 * FOOT) / 3600;

/** Avoirdupois pound, kg (by definition, 1959), and its weight, N. */
export const POUND = 0.45359237;
export const POUND_FORCE: number = POUND * GRAVITY;
