/** The shape of the answer: what every way in (web, CLI, library) shows. Plain data, cloneable to a worker. */

import type { Amount } from '../base/quantity.ts';
import type { WheelMap } from '../questions/balance/wheel-map.ts';
import type { Finding, Verdict } from '../questions/finding.ts';
import type { HaulResult } from '../questions/haul/types.ts';
import type { HoldResult } from '../questions/hold/types.ts';
import type { BrakingPoint, Driven, SpeedMap } from '../questions/speed/types.ts';
import type { RailState } from '../things/rail.ts';

/** What one more car fails by, where it lacks most: what it needs less what there is, the next car would need more. */
export interface CountLimit {
  /** `start`, `keep`, `hold`, `no-brake`, or the reason that sets the speed there. */
  readonly what: string;
  /** Signal or place by name; empty: none. */
  readonly named?: string;
  /** Chainage of the head, m. */
  readonly at?: number;
  /** What it needs there, and what there is: force, clear track with the margin kept, or speed. */
  readonly need?: Amount;
  readonly has?: Amount;
  /** Of starts and speeds kept: share that fails there, given what was stated. */
  readonly fails?: number;
  /** Adhesion, not the machine, sets the pull. */
  readonly grip?: true;
}

/** Ways in which a train is hauled, by odds. */
export type HaulWay = 'pulled' | 'pulledBooked' | 'keepsSpeed';
export type CountWay = HaulWay | 'stopped' | 'held' | 'heldByDriver' | 'heldByAll';

/**
 * Numbers of cars beside the train as it is. Each count is what goes without a limit of its kind; `least` is what
 * nothing forbids: likely started, stopped at some speed, held while the brake is tight, allowed by the host.
 */
export interface CarCount {
  readonly railState: RailState;
  /** Greatest number of cars; `null`: not limited by this (host has no rule) or not known. Started anywhere. */
  readonly pulled: number | null;
  /** Started at booked stops, signals, crossings and where the run begins. */
  readonly pulledBooked: number | null;
  /** Hauled over the ruling grade at 3 mph or more. */
  readonly keepsSpeed: number | null;
  /** From running speed within the clear track ahead, the gap to the train ahead as long as the stop needs. */
  readonly stopped: number | null;
  /** From some lower speed that can be driven, of what pulls, holds and the host allow; `null`: no more than `stopped`. */
  readonly stoppedSlower: number | null;
  /** By what driver and guard can put on, and does not leak off. */
  readonly held: number | null;
  /** By the driver alone; with a rider winding a screw on every car that has one. */
  readonly heldByDriver: number | null;
  readonly heldByAll: number | null;
  /** Where fewer fail and more do better: least number that does. */
  readonly from: Readonly<Partial<Record<CountWay, number>>>;
  /** Ways in which no number of cars does, not even the engine alone. */
  readonly none: readonly CountWay[];
  readonly host: number | null;
  /** `null` with `by`: no number of cars may leave; without: nobody can tell. */
  readonly least: number | null;
  /** Which sets the least; `null`: the search ended before any did, or nobody can tell. */
  readonly by: 'pulled' | 'stopped' | 'held' | 'host' | null;
  /** What forbids one more than the least. */
  readonly leastSets?: CountLimit;
  /** What limits one more, by count. */
  readonly sets: Readonly<Partial<Record<CountWay, CountLimit>>>;
  /** Share of starts, or of days, that fail at the worst place with as many as the count says. */
  readonly odds: Readonly<Partial<Record<HaulWay, number>>>;
  /** A count that reached the search's end (40 cars) without failing. */
  readonly unlimited: readonly CountWay[];
}

export interface Answer {
  readonly verdict: Verdict;
  /** Worst first. */
  readonly findings: readonly Finding[];
  /** For today's rail state. */
  readonly speeds: SpeedMap | null;
  readonly wheels: WheelMap;
  readonly brakingPoints: readonly BrakingPoint[];
  /** The same in zones that can be driven, in half miles per hour and in whole kilometres per hour. */
  readonly driven: Readonly<Record<'imperial' | 'metric', Driven>> | null;
  readonly cars: readonly CarCount[];
  readonly haul: HaulResult | null;
  readonly hold: HoldResult | null;
}
