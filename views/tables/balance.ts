/** Balance as tables of words, the same on the screen, in the terminal and on paper. */

import type { BalanceView, BlockAnswer, WhatIf } from '../../desk/balance.ts';
import { flangeWays, type NearestClimb } from '../../engine/questions/balance/climbing.ts';
import type { BlockTest } from '../../engine/questions/balance/twist.ts';
import type { SeatedCar, Seating } from '../../engine/questions/seat/types.ts';
import { printQuantity, type Toward } from '../../units/index.ts';
import { flangeWayWords } from '../../words/findings/balance.ts';
import { reasonOfSeating } from '../../words/seating.ts';
import type { WordTable } from '../../words/table.ts';
import { chainage, riderName, say, trade, type Voice, vehicleAt, vehicleName } from '../../words/voice.ts';

const percent = (share: number): string => `${Math.floor(share * 100 + 1e-9)} %`;

/** A lean or a speed: none left, some, or never. */
const lean = (voice: Voice, si: number | undefined): string =>
  si === undefined ? '' : si <= 0 ? 'none' : say(voice, { si, kind: 'length' }, 'down');
const speed = (voice: Voice, si: number): string =>
  si === Infinity ? 'never' : si <= 0 ? 'standing' : say(voice, { si, kind: 'speed' }, 'down');
const weight = (voice: Voice, newtons: number, toward: Toward = 'up'): string =>
  say(voice, { si: newtons, kind: 'force' }, toward);

export const balanceTables = (view: BalanceView, voice: Voice): readonly WordTable[] =>
  [loadTable(view, voice), marginTable(view, voice), curveTable(view, voice), climbTable(view, voice)].filter(
    (t) => t.rows.length > 0,
  );

/** Weight on trucks and the lightest wheel, standing level, likely masses. */
function loadTable({ data }: BalanceView, voice: Voice): WordTable {
  return {
    title: 'Standing level',
    head: [
      '',
      'weight',
      `on each ${trade(voice.wording, 'truck')}, front first`,
      'heaviest wheel',
      'lightest wheel',
      'centre of gravity, likely',
      'at the highest',
    ],
    rows: data.vehicles.map((v) => {
      const wheels = v.axles.flatMap((a) => [a.left, a.right]);
      const groups = [...new Set(v.axles.map((a) => a.group))].map((g) =>
        v.axles.filter((a) => a.group === g).reduce((sum, a) => sum + a.left + a.right, 0),
      );
      return [
        vehicleAt(voice, v.index),
        say(voice, { si: v.mass, kind: 'mass' }, 'up'),
        groups.map((n) => weight(voice, n)).join(', '),
        weight(voice, Math.max(...wheels)),
        weight(voice, Math.min(...wheels), 'down'),
        say(voice, { si: v.centre, kind: 'length' }, 'up'),
        `${say(voice, { si: v.highest, kind: 'length' }, 'up')}${v.centreKnown ? '' : ' (not measured)'}`,
      ];
    }),
  };
}

/** Leans standing, and the thinnest margins on the line. */
function marginTable({ data, at }: BalanceView, voice: Voice): WordTable {
  return {
    title: 'How little lifts a wheel',
    head: [
      '',
      'one rider leans',
      'two lean',
      'all lean',
      'all lean: goes over',
      'thinnest on the run',
      'wheel load left',
      'one leans there',
    ],
    rows: data.vehicles.map((v) => [
      vehicleAt(voice, v.index),
      lean(voice, v.lift.one),
      lean(voice, v.lift.two),
      lean(voice, v.lift.all),
      lean(voice, v.over.all),
      `${chainage(voice, at(v.running.at))} at ${say(voice, { si: v.running.speed, kind: 'speed' })}`,
      percent(v.running.share),
      lean(voice, v.running.lift.one),
    ]),
    note: 'Leans are of a rider’s centre of gravity, standing level where no place is given; riders heavy and high. Leaning is behaviour: these are margins, not promises.',
  };
}

function curveTable({ data, at }: BalanceView, voice: Voice): WordTable {
  return {
    title: 'Curves',
    head: [
      '',
      'radius',
      'set by',
      'balance allows',
      'one leans: lifts at',
      'a wheel lifts at',
      'goes over at',
    ],
    rows: data.curves.map((c) => [
      `${chainage(voice, Math.min(at(c.from), at(c.to)))} – ${chainage(voice, Math.max(at(c.from), at(c.to)))}`,
      say(voice, { si: 1 / Math.abs(c.curvature), kind: 'length' }, 'down'),
      vehicleAt(voice, c.index),
      speed(voice, c.permitted),
      speed(voice, c.liftLeaning),
      speed(voice, c.lift),
      speed(voice, c.over),
    ]),
    note: `Balance allows what leaves every wheel ${percent(data.required.value)} of its load (${data.required.source}).`,
  };
}

function climbTable({ data, at }: BalanceView, voice: Voice): WordTable {
  return {
    title: 'Flange climb: which wheel comes nearest',
    head: ['', ...climbHead],
    rows: flangeWays.flatMap((way) => {
      const climb = data.flanges.nearest[way];
      return climb ? [[flangeWayWords(way), ...climbCells(climb, voice, at)]] : [];
    }),
    note: 'A pull is positive, a push negative.',
  };
}

export const climbHead = [
  'vehicle',
  'at',
  'sideways ÷ load',
  'limit',
  'coupling ahead',
  'coupling behind',
] as const;

export function climbCells(climb: NearestClimb, voice: Voice, at: (s: number) => number): string[] {
  const force = (si: number): string => printQuantity(si, 'force', { system: voice.system });
  return [
    vehicleAt(voice, climb.index),
    chainage(voice, at(climb.at)),
    Number.isFinite(climb.found) ? say(voice, { si: climb.found, kind: 'ratio' }, 'up') : 'wheel lifted',
    `${say(voice, { si: climb.limit, kind: 'ratio' }, 'down')}${climb.shape.angleKnown ? '' : ' (60° flange assumed)'}`,
    force(climb.front),
    force(climb.rear),
  ];
}

export function twistTable({ data }: BalanceView, voice: Voice): WordTable {
  const length = (si: number, toward: Toward): string => say(voice, { si, kind: 'length' }, toward);
  return {
    title:
      data.trackTwist === undefined
        ? 'Twist: not measured on this line'
        : `Twist of the track at its worst: ${say(voice, { si: data.trackTwist, kind: 'twist' }, 'up')}`,
    head: ['', 'over', 'one corner stands off', 'takes all its load', 'load lost', 'most'],
    rows: data.vehicles.map(({ index, twist }) =>
      twist
        ? [
            vehicleAt(voice, index),
            length(twist.over, 'nearest'),
            length(twist.lift, 'up'),
            length(twist.freedom, 'down'),
            `${Math.ceil(twist.unloading * 100 - 1e-9)} %`,
            '60 %',
          ]
        : [vehicleAt(voice, index), 'cannot tell', '', '', '', ''],
    ),
  };
}

const judgements: Readonly<Record<BlockAnswer['why'], string>> = {
  lifts: 'another wheel lifts: reject',
  unloads: 'a wheel loses too much of its load: reject',
  'block-too-low': 'stays down, but the block was too low to tell: repeat with the height needed',
  'block-too-high':
    'another wheel lifts, but the block was higher than needed: repeat with the height needed',
  stays: 'all wheels stay down: accept',
  'stays-loaded': 'every wheel keeps enough load: accept',
};

export function blockWords(answer: BlockAnswer, test: BlockTest, voice: Voice): string[] {
  const length = (si: number): string => say(voice, { si, kind: 'length' }, 'up');
  return [
    `Block of ${length(test.block)} under one wheel: ${judgements[answer.why]}.`,
    `Height needed: ${length(answer.needed)} (track twist ${say(voice, { si: answer.twist, kind: 'twist' }, 'up')}${
      answer.known ? '' : ', that of the poorest published track class: the line’s own was not measured'
    }; at most 60 % of a wheel’s load may go).`,
    ...(answer.unloading === undefined
      ? []
      : [`Load lost at the track’s twist: ${Math.ceil(answer.unloading * 100 - 1e-9)} %.`]),
  ];
}

/** What would help, in sentences. */
export function whatIfWords(what: WhatIf, leanBy: number, height: number, voice: Voice): string[] {
  const length = (si: number, toward: Toward): string => say(voice, { si, kind: 'length' }, toward);
  const place = `at ${chainage(voice, what.place.at)}, ${what.place.speed > 0 ? `run at ${say(voice, { si: what.place.speed, kind: 'speed' })}` : 'standing'}`;
  const help =
    what.ballast === 0
      ? ['No ballast is needed for that.']
      : [
          what.ballast === undefined
            ? `No ballast at ${length(height, 'nearest')} above the rail prevents it.`
            : `${say(voice, { si: what.ballast, kind: 'mass' }, 'up')} of ballast, no higher than ${length(height, 'down')} above the rail, would keep all wheels down.`,
          what.lowerSeats === undefined
            ? 'Lower seats alone would not.'
            : `So would seats ${length(what.lowerSeats, 'up')} lower.`,
        ];
  return [
    `With the heaviest rider leaning ${length(leanBy, 'up')} ${place}, a wheel lifts at ${speed(voice, what.speed)}.`,
    ...help,
    ...(what.standingUp === undefined
      ? []
      : [`If that rider stands up there, a lean of ${lean(voice, what.standingUp)} lifts a wheel.`]),
    ...(what.stepOff === undefined
      ? []
      : [
          `Getting off, that rider may put a foot no further than ${lean(voice, what.stepOff)} from the middle of the car before a wheel lifts.`,
        ]),
  ];
}

export function seatingTable(seating: Seating, voice: Voice): WordTable {
  const riders = (car: SeatedCar): string =>
    seating.places
      .filter((p) => p.vehicle === car.vehicle)
      .map((p) => `${p.seat}: ${riderName(voice, p.rider)}`)
      .join(', ');
  return {
    title: 'Seating',
    head: ['', 'seats', 'lightest wheel', `lightest ${trade(voice.wording, 'truck')}`, 'why'],
    rows: seating.cars.map((car) => [
      vehicleName(voice, car.vehicle),
      riders(car) || 'empty',
      percent(car.margin.wheel),
      percent(car.margin.trucks),
      car.reasons.map(reasonOfSeating).join('; '),
    ]),
    note: seatingNote(seating, voice),
  };
}

function seatingNote(seating: Seating, voice: Voice): string {
  const moved = seating.moved.map((id) => riderName(voice, id));
  return [
    `The worst car keeps ${percent(seating.worst)} of an even wheel load in the hardest place of the line.`,
    seating.proven
      ? 'No other seating keeps more: proven.'
      : `No seating keeps more than ${Math.ceil(seating.bound * 100)} %; whether one keeps more than this was not proven.`,
    moved.length === 0 ? 'Nobody moves.' : `These move: ${moved.join(', ')}.`,
    ...(seating.split.length > 0 ? [`Too many for one car, split: ${seating.split.join(', ')}.`] : []),
    'The host’s rules on who may ride where come first.',
  ].join(' ');
}
