/**
 * Coupler forces of one outing: bands over seeded runs in a scenario, and what the couplings must bear when the
 * train is handled roughly, as data and as tables.
 */
import { askBalance } from '../engine/questions/balance/ask.ts';
import { askCouplers, type CouplerData } from '../engine/questions/couplers/ask.ts';
import { type CouplerScenario, couplerBands, type GapBand } from '../engine/questions/couplers/ensemble.ts';
import { ranked } from '../engine/questions/make.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import { gridOf } from '../engine/questions/speed/map.ts';
import { prepare } from '../engine/motion/prepare.ts';
import { couplerScenarioWords } from '../words/findings/couplers.ts';
import { say, type Voice, vehicleAt } from '../words/voice.ts';
import { climbCells, climbHead } from '../words/tables/balance.ts';
import { turnFindings, turnOf } from './chainage.ts';
import { timedOuting } from './timed.ts';
import type { WordTable } from '../words/tables/table.ts';

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

export interface CouplerLoads {
  /** Chainages here are in the running direction; `at` turns them into the line's own. */
  readonly data: CouplerData;
  readonly findings: readonly Finding[];
  readonly at: (s: number) => number;
}

export function lookAtCouplerLoads(outing: Outing): CouplerLoads {
  const context = openOuting(timedOuting(outing));
  const balance = askBalance(context, gridOf(context.line.length)).data;
  const { data, findings } = askCouplers(context, prepare(context, 0.5, 0).brakes.groups, balance);
  return { data, findings: ranked(turnFindings(outing, findings)), at: turnOf(outing) };
}

export const couplerLoadTables = (loads: CouplerLoads, voice: Voice): WordTable[] => [
  strengthTable(loads, voice),
  ...(loads.data.curves.some((c) => c.climb) ? [curveTable(loads, voice)] : []),
];

function strengthTable({ data }: CouplerLoads, voice: Voice): WordTable {
  const force = (si: number, toward: 'up' | 'down' = 'up'): string =>
    say(voice, { si, kind: 'force' }, toward);
  const peak = ({ force: si, scenario }: CouplerData['gaps'][number]['pull']): string[] => [
    force(si),
    scenario ? couplerScenarioWords[scenario] : '',
  ];
  return {
    title: 'What the couplings must bear, handled roughly',
    head: ['behind', 'steady pull', 'peak pull', 'pulled when', 'peak push', 'pushed when', 'working load'],
    rows: data.gaps.map(({ gap, steady, pull, push, strength, known }) => [
      vehicleAt(voice, gap),
      force(steady),
      ...peak(pull),
      ...peak(push),
      strength === null ? 'not stated' : `${force(strength, 'down')}${known ? '' : ' (one of two stated)'}`,
    ]),
    note: 'Peaks are the greatest of 59 runs: at 95 % confidence no less than what 95 in 100 runs stay below.',
  };
}

function curveTable({ data, at }: CouplerLoads, voice: Voice): WordTable {
  return {
    title: 'Peaks in curves: which wheel comes nearest to climbing',
    head: ['', ...climbHead, 'upright'],
    rows: data.curves.flatMap(({ scenario, way, climb, tip }) =>
      climb
        ? [
            [
              `${way}, ${couplerScenarioWords[scenario]}`,
              ...climbCells(climb, voice, at),
              tip ? say(voice, { si: tip.share, kind: 'ratio' }, 'down') : '',
            ],
          ]
        : [],
    ),
    note: 'A pull is positive, a push negative; both couplings of a vehicle are taken at their peak at once. Upright: the least share of wheel load that the lighter side of any vehicle keeps.',
  };
}
