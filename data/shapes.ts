/**
 * Typical shapes of miniature stock, drawn by us: dimensions that stand in where a person's own train has none yet.
 * Each use is written into the paper as assumed, with this source, and so shows among the assumptions. Where it
 * matters to what stays up, they lie on the unsafe side: high seats, a high centre, a short base.
 */
export const SHAPE_SOURCE = 'typical shape, common practice, no source';

export type EngineShape = 'steam' | 'battery' | 'petrol';

/** By gauge, m: height of a seat above the rail and length of a car, m; between two rows in proportion. */
const byGauge: readonly { readonly gauge: number; readonly seat: number; readonly car: number }[] = [
  { gauge: 0.0889, seat: 0.25, car: 1.5 },
  { gauge: 0.127, seat: 0.3, car: 1.8 },
  { gauge: 0.184, seat: 0.36, car: 2.4 },
  { gauge: 0.26, seat: 0.42, car: 3.2 },
  { gauge: 0.381, seat: 0.5, car: 4.5 },
];

function between(gauge: number, of: 'seat' | 'car'): number {
  const last = byGauge[byGauge.length - 1];
  if (gauge <= byGauge[0].gauge) return byGauge[0][of];
  if (gauge >= last.gauge) return last[of];
  const i = byGauge.findIndex((row) => row.gauge >= gauge);
  const [a, b] = [byGauge[i - 1], byGauge[i]];
  return a[of] + ((gauge - a.gauge) / (b.gauge - a.gauge)) * (b[of] - a[of]);
}

/** Top of a seat above the rail, m. */
export const seatHeight = (gauge: number): number => between(gauge, 'seat');
export const carLength = (gauge: number): number => between(gauge, 'car');
/** One behind the other takes so much of a car, m. */
export const SEAT_PITCH = 0.55;

/** Height of an engine's centre of gravity as a multiple of the gauge: low, likely, high. */
export const centreOverGauge: Readonly<Record<EngineShape, readonly [number, number, number]>> = {
  steam: [1.5, 1.9, 2.4],
  battery: [1.1, 1.6, 2.2],
  petrol: [1.2, 1.7, 2.3],
};

/** An engine of 272 kg (600 lb) is so long, m; others by the cube root of their weight. */
const lengthOf: Readonly<Record<EngineShape, number>> = { steam: 2.3, battery: 1.8, petrol: 1.8 };
export const engineLength = (shape: EngineShape, mass: number): number =>
  Math.min(8, Math.max(0.6, lengthOf[shape] * Math.cbrt(mass / 272)));

export interface GroupShape {
  readonly name: string;
  /** Of the length, from the front. */
  readonly at: number;
  readonly axles: number;
  /** Of the gauge. */
  readonly wheelBase: number;
  readonly driven?: true;
}

/** A steam engine with its tender stands with about two thirds of its weight on the drivers. */
export const engineGroups: Readonly<Record<EngineShape, readonly GroupShape[]>> = {
  steam: [
    { name: 'drivers', at: 0.35, axles: 3, wheelBase: 2, driven: true },
    { name: 'tender', at: 0.8, axles: 2, wheelBase: 1.5 },
  ],
  battery: [
    { name: 'front truck', at: 0.22, axles: 2, wheelBase: 1.5, driven: true },
    { name: 'rear truck', at: 0.78, axles: 2, wheelBase: 1.5, driven: true },
  ],
  petrol: [
    { name: 'front truck', at: 0.22, axles: 2, wheelBase: 1.5, driven: true },
    { name: 'rear truck', at: 0.78, axles: 2, wheelBase: 1.5, driven: true },
  ],
};

/** Height of an empty car's centre of gravity as a share of its seats': low, likely, high. */
export const carCentreOverSeat: readonly [number, number, number] = [0.45, 0.7, 1];

export const carGroups: readonly GroupShape[] = [
  { name: 'front truck', at: 0.2, axles: 2, wheelBase: 1.1 },
  { name: 'rear truck', at: 0.8, axles: 2, wheelBase: 1.1 },
];

/** Share of a motor's power at the rail, and the speeds, m/s, at which the pull is written down from it. */
export const POWER_AT_RAIL = 0.5;
export const POWER_SPEEDS: readonly number[] = [0, 0.9, 1.8, 2.7, 3.6];
/** What a spring balance reads at a stand is taken to be kept up to here, m/s (3 mph). */
export const PULL_KEPT_TO = 1.34112;
/** Below this gauge, m, a driver sits on the first car. */
export const DRIVER_BEHIND_BELOW = 0.1524;
/** Least length of a line of which nobody said how long it is, m. */
export const LEAST_LINE = 304.8;
