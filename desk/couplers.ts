/** Coupler forces of one outing in a scenario: bands over seeded runs, as data and as a table. */
import { type CouplerScenario, couplerBands, type GapBand } from '../engine/coupling/ensemble.ts';
import { openOuting } from '../engine/outing/context.ts';
import type { Outing } from '../engine/outing/types.ts';
import { prepare } from '../engine/stopping/prepare.ts';
import { say, type Voice, vehicleAt } from '../words/voice.ts';
import { turnOf } from './chainage.ts';
import { timedOuting } from './timed.ts';
import type { WordTable } from './word-table.ts';

export interface CouplersAsk {
  readonly scenario: CouplerScenario;
  /** In the line's own chainage, m. */
  readonly at: number;
  readonly speed: number;
}

/** Runs of a band, and how long each is followed, s. */
const RUNS = 64;
const TIME = 20;
const SEED = 1;

export function lookAtCouplers(outing: Outing, { scenario, at, speed }: CouplersAsk): GapBand[] {
  const context = openOuting(timedOuting(outing));
  const here = turnOf(outing)(at);
  const { groups } = prepare(context, 0.5, 0).brakes;
  return couplerBands(context, groups, { scenario, at: here, speed, runs: RUNS, seed: SEED, time: TIME });
}

export const notRepeatable =
  'A single peak through slack is not repeatable; these are bands over 64 runs with the slack standing differently.';

export function couplerTable(bands: readonly GapBand[], voice: Voice): WordTable {
  const force = (si: number): string => say(voice, { si, kind: 'force' }, 'up');
  return {
    title: 'Peak forces in the couplings',
    head: [
      'behind',
      'pull: half below',
      '9 in 10 below',
      'most',
      'push: half below',
      '9 in 10 below',
      'most',
    ],
    rows: bands.map(({ gap, pull, push }) => [
      vehicleAt(voice, gap),
      ...[pull.median, pull.p90, pull.most, push.median, push.p90, push.most].map(force),
    ]),
  };
}
