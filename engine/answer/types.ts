/** The shape of the answer: what every way in (web, CLI, library) shows. Plain data, cloneable to a worker. */

import type { WheelMap } from '../questions/balance/wheel-map.ts';
import type { Finding, Verdict } from '../questions/finding.ts';
import type { HaulResult } from '../questions/haul/types.ts';
import type { HoldResult } from '../questions/hold/types.ts';
import type { BrakingPoint, SpeedMap } from '../questions/speed/types.ts';
import type { RailState } from '../things/rail.ts';

export interface CarCount {
  readonly railState: RailState;
  /** Greatest number of cars; `null`: not limited by this (host has no rule) or not known. */
  readonly pulled: number | null;
  readonly stopped: number | null;
  /** By what driver and guard can put on, and does not leak off: this one decides. */
  readonly held: number | null;
  /** By the driver alone; with a rider winding a screw on every car that has one. */
  readonly heldByDriver: number | null;
  readonly heldByAll: number | null;
  readonly host: number | null;
  readonly least: number | null;
  /** Which count sets the least. */
  readonly by: 'pulled' | 'stopped' | 'held' | 'host' | null;
  /** Where it fails first when one more is added, m. */
  readonly failsAt: { readonly pulled?: number; readonly stopped?: number; readonly held?: number };
  /** A count that reached the search's end (40 cars) without failing. */
  readonly unlimited: readonly ('pulled' | 'stopped' | 'held' | 'heldByDriver' | 'heldByAll')[];
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
