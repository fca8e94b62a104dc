/** Coupler forces as tables, the same on the screen and in the terminal. */
import type { CouplerLoads } from '../../desk/couplers.ts';
import type { CouplerData } from '../../engine/questions/couplers/ask.ts';
import type { GapBand } from '../../engine/questions/couplers/ensemble.ts';
import { couplerScenarioWords } from '../../words/findings/couplers.ts';
import { lieWords } from '../../words/findings/swing.ts';
import type { WordTable } from '../../words/table.ts';
import { chainage, say, type Voice, vehicleAt } from '../../words/voice.ts';
import { climbCells, climbHead } from './balance.ts';

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

export const couplerLoadTables = (loads: CouplerLoads, voice: Voice): WordTable[] => [
  ...(loads.swings.length > 0 ? [swingTable(loads, voice)] : []),
  strengthTable(loads, voice),
  ...(loads.data.curves.some((c) => c.climb) ? [curveTable(loads, voice)] : []),
];

function swingTable({ swings, at }: CouplerLoads, voice: Voice): WordTable {
  const angle = (si: number, toward: 'up' | 'down'): string => say(voice, { si, kind: 'angle' }, toward);
  return {
    title: 'How far the couplers must swing in curves',
    head: ['coupler', 'toward', 'must swing', 'where', 'the track there', 'swings', 'left'],
    rows: swings.map(({ name, end, other, needed, at: s, lie, swing, shanksKnown }) => [
      `${name}, ${end}`,
      other,
      `${angle(needed, 'up')}${shanksKnown ? '' : ' (short shanks)'}`,
      needed > 0 ? chainage(voice, at(s)) : '',
      needed > 0 ? lieWords[lie] : '',
      swing === null ? 'not stated' : angle(swing, 'down'),
      swing === null ? '' : swing < needed ? 'none' : angle(swing - needed, 'down'),
    ]),
    note: 'Against the vehicle’s own axis, both vehicles placed over the middle of the track; slack and play between the rails come on top.',
  };
}

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
