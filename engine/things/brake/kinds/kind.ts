/** What a kind of brake is: all that the house asks of one. A kind is one file here and a line in `index.ts`. */
import type { BrakeGear } from '../../vehicle/types.ts';
import type { BrakeKind } from './index.ts';

/** What becomes of a brake without what works it. */
export type SupplyOutcome = 'lost' | 'applies' | 'as-set' | 'released' | 'unknown';

export interface SupplyLoss {
  /** The hose or cable parts. */
  readonly parted: SupplyOutcome;
  /** Steam, compressor or current fails with the train whole. */
  readonly engineFails: SupplyOutcome;
}

export interface KindOfBrake {
  /**
   * `through`: by a pipe or cable from the engine, one handle for all of it. `engine`: by the one handle of what
   * works the engine itself. `arm`: by whoever rides there, each by its own handle. `push`: by the coupler, by nobody's.
   */
  readonly worked: 'through' | 'engine' | 'arm' | 'push';
  /** What its pipe or cable carries. */
  readonly carries?: 'pressure' | 'vacuum' | 'current';
  /** What the same gear becomes when it is made to come on by itself. */
  readonly madeAutomatic?: BrakeKind;
  /** A guard has a valve to let it go. */
  readonly guardsValve?: true;
  /** Common practice, no source; the wiring for electric. */
  readonly supplyLost: (gear: Pick<BrakeGear, 'parking' | 'onSupplyLoss'>) => SupplyLoss;
}

/** Absolute pressure of the day, working pressure or depression of the gear, and what the engine charges to, Pa. */
export interface PipeAir {
  readonly atmosphere: number;
  readonly working: number;
  readonly charge: number;
}

/** A brake whose pipe carries air. */
export interface AirBrake extends KindOfBrake {
  readonly worked: 'through';
  readonly carries: 'pressure' | 'vacuum';
  /** Absolute pressure in the pipe with the brake applied, or released, Pa. */
  readonly pipe: (applied: boolean, air: PipeAir) => number;
  /** What joins a cylinder to the pipe. */
  readonly cylinder: 'straight' | 'triple valve' | 'ball valve';
  /** Where air for applications is kept, of which a number can be counted. */
  readonly kept?: 'main reservoir' | 'car reservoir';
}
