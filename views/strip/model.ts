/**
 * What the strip shows and how: the line as surveyed, the answer's speeds and findings laid on it, one
 * moment of the train, and the window through which it is seen. Plain data, so that any way in can make it.
 */

import type { RailPiece } from '../../engine/outing/rails.ts';
import type { WheelMap } from '../../engine/questions/balance/wheel-map.ts';
import type { Severity } from '../../engine/questions/finding.ts';
import type { BrakingPoint, Driven, SpeedMap, SpeedReason } from '../../engine/questions/speed/types.ts';
import type { Line, Place } from '../../engine/things/line/types.ts';
import type { RailState } from '../../engine/things/rail.ts';
import type { LoadedTrain } from '../../engine/things/train/loaded.ts';

export interface StripMark {
  /** Number shown here and in the list of findings. */
  readonly number: number;
  readonly severity: Severity;
  readonly from: number;
  readonly to?: number;
  readonly title: string;
}

/** All chainages as surveyed, whichever way the train runs. */
export interface StripModel {
  readonly line: Line;
  /** 1: the train runs toward growing chainage. */
  readonly facing: 1 | -1;
  /** `at` grows. */
  readonly speeds: SpeedMap | null;
  readonly wheels: WheelMap | null;
  readonly plannedSpeed?: number;
  /** In the zones of one system of units. */
  readonly driven: Driven | null;
  /** Rail that is not like the rest. */
  readonly rails?: readonly RailPiece[];
  readonly train: LoadedTrain | null;
  readonly marks: readonly StripMark[];
  /** Why nobody runs by it, over it all; absent or empty: one does, or it is said around the drawing. */
  readonly notToRun?: string;
}

/** The train at a place and speed, and the reach it has from there. Distances in m, m/s. */
export interface StripMoment {
  readonly head: number;
  readonly speed: number;
  /** Infinity: does not stop. Absent: not known. */
  readonly likely?: number;
  readonly cautious?: number;
  /** From the driver's decision to full brake, on the cautious stop. */
  readonly beforeFullBrake?: number;
  /** Clear distance needed behind the tail. */
  readonly gap?: number;
}

export interface StripView {
  /** px */
  readonly width: number;
  readonly height: number;
  /** Window on the line, m; on a loop it may lie across the origin. */
  readonly from: number;
  readonly to: number;
  /** px */
  readonly textSize: number;
  readonly cursor?: number;
  /** Number of the mark shown as chosen. */
  readonly chosen?: number;
}

/** How figures and kinds are said; made by the way in from its units and wording. */
export interface StripWords {
  chainage(m: number): string;
  length(m: number): string;
  speed(metresPerSecond: number): string;
  /** Just the number. */
  speedTick(metresPerSecond: number): string;
  chainageTicks(from: number, to: number, count: number): readonly number[];
  /** @param rise in the running direction */
  grade(rise: number): string;
  radius(m: number): string;
  reason(reason: SpeedReason): string;
  place(place: Place): string;
  rail(state: RailState): string;
  /** Where the train's wheels run lightest. */
  lightest(worst: { readonly at: number; readonly share: number; readonly by: number }): string;
  readonly level: string;
  readonly straight: string;
  readonly left: string;
  readonly right: string;
  readonly heightsTimes: string;
  /** Cautious. */
  toStop(m: number): string;
  gapOf(m: number): string;
  act(point: BrakingPoint): string;
  readonly never: string;
}
