/**
 * Peak forces that must be reckoned with in the couplings of a train that is handled roughly: started with all
 * slack in, braked fully, and run in behind an engine that brakes alone with all slack out.
 *
 * What is told is passed by one run in a hundred, given what was stated. So few runs do not reach that far: beyond the
 * greatest fifth of them the tail is carried on as an exponential of their mean excess (peaks over a threshold; Pickands
 * 1975, from memory), which the tail of a sum of bounded inputs does not pass. Level and straight: an even grade pulls at
 * all alike, so that the peaks hold on any; what a grade adds by itself is asked with steady forces.
 */

import { speedMeant } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import { isCar } from '../../things/train/cars.ts';
import { couplerRuns, type GapRuns } from './ensemble.ts';

export const peakScenarios = ['start-bunched', 'full-brake', 'run-in'] as const;
export type PeakScenario = (typeof peakScenarios)[number];

export const PEAK_RUNS = 59;
const SEED = 1;
/** The throttle is open, or the slowest brake is on, and the slack has run through the train; s. */
const SETTLES = 4;

export interface Peaks {
  readonly scenario: PeakScenario;
  /** N, ≥ 0, of each gap: passed by one run in a hundred. */
  readonly pull: readonly number[];
  readonly push: readonly number[];
  /** Behind them, by gap. */
  readonly runs: readonly GapRuns[];
}

/** @param runs fewer only where the shape of an answer matters, not its figures */
export function cautiousPeaks(
  context: OutingContext,
  groups: readonly BrakedGroup[],
  runs: number = PEAK_RUNS,
): Peaks[] {
  const { loaded, outing } = context;
  if (loaded.vehicles.length < 2) return [];
  const speed = speedMeant(outing);
  const onEngines = groups.filter((g) => !isCar(loaded.vehicles[g.vehicle].vehicle));
  const happens: Readonly<Record<PeakScenario, boolean>> = {
    'start-bunched': loaded.vehicles.some((v) => v.vehicle.traction),
    'full-brake': groups.length > onEngines.length,
    'run-in': onEngines.length > 0,
  };
  const slowest = groups.reduce((t, g) => Math.max(t, g.deadTime.high + g.buildUp.high), 0);
  return peakScenarios
    .filter((scenario) => happens[scenario])
    .map((scenario) => {
      const time = SETTLES + (scenario === 'start-bunched' ? 0 : slowest);
      const drawn = couplerRuns(context, groups, { scenario, speed, runs, seed: SEED, time });
      const peaks = (way: 'pull' | 'push'): number[] => drawn.map((gap) => passedBy(gap[way], ODDS));
      return { scenario, pull: peaks('pull'), push: peaks('push'), runs: drawn };
    });
}

/** What can hurt, of so few runs: aimed at a little beyond one in a hundred. */
export const ODDS = 0.007;
/** Of all runs, those whose mean excess tells how the tail falls off. */
const TAIL = 0.2;

/** What a share of all draws passes, told from the few that there are. */
export function passedBy(values: Float64Array, odds: number): number {
  const sorted = values.slice().sort();
  const count = Math.max(1, Math.round(TAIL * sorted.length));
  const tail = sorted.subarray(sorted.length - count);
  const from = sorted[Math.max(0, sorted.length - count - 1)];
  const excess = tail.reduce((sum, v) => sum + v - from, 0) / count;
  return from + excess * Math.log(count / sorted.length / odds);
}
