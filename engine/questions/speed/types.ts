/** What is told of speeds: the limit at each place with its reason, and where braking begins. */
import type { RailState } from '../../things/rail.ts';

/** Why the permitted speed is what it is at a place. */
export type SpeedReasonKind =
  | 'stopping-sight'
  | 'stopping-visibility'
  | 'stopping-signal'
  | 'stopping-assumed-sight'
  | 'stopping-end'
  | 'host-line'
  | 'host-place'
  | 'vehicle'
  | 'curve'
  | 'balance'
  | 'flange'
  | 'agreed'
  | 'temporary'
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

/** A stretch to drive at one round speed, in the running order: `from` is where the head comes in. */
export interface DrivenZone {
  /** `arrive`: to a stand at the end of the line, from the speed of the zone before. */
  readonly kind: 'run' | 'arrive';
  /** Chainage of the head, m; on a loop a zone may run over the origin. */
  readonly from: number;
  readonly to: number;
  /** m/s, at most what is permitted anywhere in it; of an arrival: from which one comes to the stand. */
  readonly speed: number;
  /** What permits least in it. */
  readonly reason: SpeedReason;
  /** Longest in it, m. */
  readonly cautiousStop: number;
  readonly gap: number;
}

/** The line in zones that can be driven, with where to brake for each. */
export interface Driven {
  /** Speeds are whole steps of this, m/s. */
  readonly step: number;
  /** They cover the line; on a loop the first is the one that holds the origin. */
  readonly zones: readonly DrivenZone[];
  /** Braking begins here, cautious: for each slower zone, each booked stop, the stand at the end. */
  readonly acts: readonly BrakingPoint[];
}
