/** What is told of speeds: the limit at each place with its reason, and where braking begins. */
import type { RailState } from '../../things/rail.ts';

/** Why the permitted speed is what it is at a place. */
export type SpeedReasonKind =
  | 'stopping-sight'
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
