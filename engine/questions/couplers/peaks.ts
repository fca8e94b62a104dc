/**
 * Peak forces that must be reckoned with in the couplings of a train that is handled roughly: started with all
 * slack in, braked fully, and run in behind an engine that brakes alone with all slack out.
 *
 * The greatest of 59 runs is with 95 % confidence no less than their 95th percentile: 1 − 0.95⁵⁹ > 0.95 (Wilks
 * 1941, distribution-free; from memory, and plain from the figures). Level and straight: an even grade pulls at all
 * alike, so that the peaks hold on any; what a grade adds by itself is asked with steady forces.
 */

import type { OutingContext } from '../../outing/open.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import { isCar } from '../../things/train/cars.ts';
import { couplerBands } from './ensemble.ts';

export const peakScenarios = ['start-bunched', 'full-brake', 'run-in'] as const;
export type PeakScenario = (typeof peakScenarios)[number];

export const PEAK_RUNS = 59;
const SEED = 1;
/** The throttle is open, or the slowest brake is on, and the slack has run through the train; s. */
const SETTLES = 4;

export interface Peaks {
  readonly scenario: PeakScenario;
  /** N, ≥ 0, of each gap. */
  readonly pull: readonly number[];
  readonly push: readonly number[];
}

/** @param runs fewer only where the shape of an answer matters, not its figures */
export function cautiousPeaks(
  context: OutingContext,
  groups: readonly BrakedGroup[],
  runs: number = PEAK_RUNS,
): Peaks[] {
  const { loaded, outing } = context;
  if (loaded.vehicles.length < 2) return [];
  const host = outing.host.speed?.value;
  const speed = Math.min(outing.plannedSpeed ?? host ?? 3, host ?? Infinity);
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
      const bands = couplerBands(context, groups, { scenario, speed, runs, seed: SEED, time });
      return { scenario, pull: bands.map((b) => b.pull.most), push: bands.map((b) => b.push.most) };
    });
}
