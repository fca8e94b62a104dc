/** The shape of the answer: what every way in (web, CLI, library) shows. Plain data, cloneable to a worker. */
import type { Finding, Verdict } from '../questions/finding.ts';
import type { Sampled } from '../motion/sample.ts';
import type { RailState } from '../outing/types.ts';

/** Why the permitted speed is what it is at a place. */
export type SpeedReasonKind =
  | 'stopping-sight'
  | 'stopping-signal'
  | 'stopping-end'
  | 'host-line'
  | 'host-place'
  | 'vehicle'
  | 'curve'
  | 'balance'
  | 'flange'
  | 'agreed'
  | 'looked-no-higher'
  | 'cannot-stop';

export interface SpeedReason {
  readonly kind: SpeedReasonKind;
  /** Place, vehicle or rule it comes from. */
  readonly what: string;
  readonly source: string;
}

/** Permitted speed by chainage of the train's head, on an even grid. SI. */
export interface SpeedMap {
  readonly railState: RailState;
  readonly step: number;
  readonly at: Float64Array;
  /** m/s */
  readonly limit: Float64Array;
  /** Index into `reasons` by grid point. */
  readonly reason: Uint16Array;
  readonly reasons: readonly SpeedReason[];
  /** Stop from the running speed (permitted, or planned where lower), m; Infinity: the brake does not hold. */
  readonly likelyStop: Float64Array;
  readonly cautiousStop: Float64Array;
  /** Gap needed to the train ahead at the running speed, m, never below the host's. */
  readonly gap: Float64Array;
}

/** How light the train's lightest wheel runs, by chainage of the train's head, on the grid of the speeds. */
export interface WheelMap {
  readonly at: Float64Array;
  /** Share of its load standing level left, at the host's or planned speed held to what balance allows. */
  readonly share: Float64Array;
  /** Vehicle that the wheel is under, −1: none whose centre of gravity is bounded. */
  readonly by: Int16Array;
  /** Least share allowed. */
  readonly required: number;
  /** Vehicles left out: nothing bounds their centre of gravity. */
  readonly unknown: readonly number[];
}

/** Where braking must begin for a stop or a lower limit ahead. */
export interface BrakingPoint {
  readonly kind: 'stop' | 'slow';
  readonly what: string;
  /** Chainage where the train must stand or have slowed, m. */
  readonly target: number;
  /** Chainage where the driver must act (cautious), m. */
  readonly at: number;
  readonly fromSpeed: number;
  readonly toSpeed: number;
}

export interface CarCount {
  readonly railState: RailState;
  /** Greatest number of cars; `null`: not limited by this (host has no rule) or not known. */
  readonly pulled: number | null;
  readonly stopped: number | null;
  readonly held: number | null;
  readonly host: number | null;
  readonly least: number | null;
  /** Which count sets the least. */
  readonly by: 'pulled' | 'stopped' | 'held' | 'host' | null;
  /** Where it fails first when one more is added, m. */
  readonly failsAt: { readonly pulled?: number; readonly stopped?: number; readonly held?: number };
  /** A count that reached the search's end (40 cars) without failing. */
  readonly unlimited: readonly ('pulled' | 'stopped' | 'held')[];
}

/** A stop from a place and speed. */
export interface StopResult {
  readonly at: number;
  readonly speed: number;
  readonly likely: StopFigure;
  /** 99th percentile with its upper confidence bound. */
  readonly cautious: StopFigure;
  /** Sampling: n, 50/90/99 percentiles, upper 95 % confidence bound of the 99th. m */
  readonly sampled: Sampled;
}

export interface StopFigure {
  /** m; Infinity: does not stop. */
  readonly distance: number;
  /** s */
  readonly time: number;
  /** m from the decision to full brake. */
  readonly beforeFullBrake: number;
  /** Greatest speed on the way, m/s. */
  readonly topSpeed: number;
}

export interface HaulResult {
  /** Worst place for starting: head chainage, m. */
  readonly startsAt: number;
  readonly startPull: number;
  readonly startNeed: number;
  /** Speed kept up on the ruling grade, m/s; null: cannot tell; 0: stalls. */
  readonly balancingSpeed: number | null;
  readonly rulingAt: number;
}

export interface HoldResult {
  /** Steepest pull on the standing train, N, and where its head stands, m. */
  readonly pull: number;
  readonly at: number;
  /** Force of the brakes that do not leak off, N. */
  readonly parking: number;
  /** Force of all brakes, N. */
  readonly all: number;
}

export interface Answer {
  readonly verdict: Verdict;
  /** Worst first. */
  readonly findings: readonly Finding[];
  /** For today's rail state. */
  readonly speeds: SpeedMap | null;
  readonly wheels: WheelMap;
  readonly brakingPoints: readonly BrakingPoint[];
  readonly cars: readonly CarCount[];
  readonly haul: HaulResult | null;
  readonly hold: HoldResult | null;
}
