/**
 * A number that knows how sure it is, and the kinds of quantity the house deals in.
 *
 * Everything is SI. `value` is the likely figure; `low` and `high` bound it. A quantity that is not
 * known is absent (`undefined`), never zero: absence leads to the answer "cannot tell".
 */

/** Where a figure comes from. */
export type How = 'measured' | 'stated' | 'assumed';

export interface Quantity {
  /** Likely value, SI. */
  readonly value: number;
  /** Lower bound, SI; low ≤ value. */
  readonly low: number;
  /** Upper bound, SI; high ≥ value. */
  readonly high: number;
  readonly how: How;
  readonly source?: string;
  /** ISO date of the measurement. */
  readonly date?: string;
  /** Measured together with others: draws take them together. */
  readonly fit?: SharedFit;
}

/** How a measured figure goes with the others of its fit. */
export interface SharedFit {
  /** Of the fit: figures of two fits know nothing of each other. */
  readonly id: string;
  /** Its row of the Cholesky factor of their correlations. */
  readonly factors: readonly number[];
}

/** Kinds of quantity, each with one SI unit. */
export const kinds = {
  length: 'm',
  area: 'm²',
  volume: 'm³',
  speed: 'm/s',
  acceleration: 'm/s²',
  time: 's',
  mass: 'kg',
  force: 'N',
  /** Absolute pressure. */
  pressure: 'Pa',
  /** Pressure above the atmosphere; psi as a hobby gauge shows it. */
  gaugePressure: 'Pa',
  /** Depression below the atmosphere: positive. */
  vacuum: 'Pa',
  /** Rise over run, uphill positive. */
  grade: 'm/m',
  angle: 'rad',
  /** 1/radius. */
  curvature: '1/m',
  /** Dimensionless fraction or ratio. */
  ratio: '1',
  count: '1',
  /** Force per weight: N/kN and lb/ton both reduce to N/N. */
  specificForce: 'N/N',
  energy: 'J',
  power: 'W',
  stiffness: 'N/m',
  /** Volume of free air per time. */
  flow: 'm³/s',
  temperature: 'K',
  stress: 'Pa',
  /** Twist of track: height difference per length. */
  twist: 'm/m',
  momentum: 'N·s',
  moment: 'N·m',
} as const;

export type Kind = keyof typeof kinds;

/** A number of a known kind, SI. */
export interface Amount<K extends Kind = Kind> {
  readonly si: number;
  readonly kind: K;
}

export const amount = <K extends Kind>(si: number, kind: K): Amount<K> => ({ si, kind });

/** A quantity without spread, for definitions and dimensions taken as exact. */
export const exact = (value: number, how: How = 'stated', source?: string): Quantity =>
  source === undefined
    ? { value, low: value, high: value, how }
    : { value, low: value, high: value, how, source };

export const between = (low: number, value: number, high: number, how: How, source?: string): Quantity =>
  source === undefined ? { value, low, high, how } : { value, low, high, how, source };
