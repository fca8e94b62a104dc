/** Wheels on their track and couplers over crests as tables, the same on the screen and in the terminal. */
import type { Fit, SheetWord } from '../../desk/fit.ts';
import type { CrestGap } from '../../engine/questions/crests/look.ts';
import { kindOf } from '../../engine/questions/standards/ask.ts';
import type { Compared, Judged } from '../../engine/questions/standards/look.ts';
import type { Met, WheelsetFit } from '../../engine/questions/wheels/look.ts';
import { yearly } from '../../engine/questions/wheels/worn.ts';
import { dayText } from '../../papers/due/day.ts';
import { calliper, ofSheet, tape } from '../../words/calliper.ts';
import { standardNames } from '../../words/standards.ts';
import type { WordTable } from '../../words/table.ts';
import { chainage, say, type Voice } from '../../words/voice.ts';

const length = (si: number, voice: Voice, toward: 'up' | 'down'): string => calliper(si, voice, toward);

/** What is left, rounded down; and where, if at a frog. */
function leftCell(met: Met | null, voice: Voice): string {
  if (!met) return 'not measured';
  const left = met.left < 0 ? `${length(-met.left, voice, 'up')} short` : length(met.left, voice, 'down');
  return met.place === '' ? left : `${left} (${met.place})`;
}

function backCells({ backs, wheelset }: WheelsetFit, voice: Voice): string[] {
  if (!backs) return ['not measured', ''];
  const readings = wheelset.backToBack?.length ?? 0;
  return [
    length(backs.least, voice, 'down'),
    readings < 2 ? 'one reading' : length(backs.most - backs.least, voice, 'up'),
  ];
}

export const wheelsTable = ({ wheelsets }: Fit, voice: Voice): WordTable => ({
  title: 'Wheels on this track: what is left of each pair',
  head: [
    'wheelset',
    'back to back',
    'varies',
    'frog point',
    'guard faces',
    'between the rails',
    'tread on the rail',
    'flange to floor',
  ],
  rows: wheelsets.map((fit) => [
    `${fit.name}, ${fit.wheelset.name}`,
    ...backCells(fit, voice),
    leftCell(fit.frog, voice),
    leftCell(fit.guard, voice),
    leftCell(fit.gauge, voice),
    leftCell(fit.tread, voice),
    leftCell(fit.floor, voice),
  ]),
  note:
    wheelsets.length === 0
      ? 'No wheelset of this train is measured.'
      : 'Each at the frog, crossing or gauge where least is left. Not measured: on the wheelset or on the line.',
});

const wornNames = {
  flangeThickness: 'flange thickness',
  flangeHeight: 'flange height',
  hollow: 'hollow of the tread',
} as const;

/** Those that were read by days or are worn out, and of each figure the one with least left. */
function toldOf(wear: Fit['wear']): Fit['wear'] {
  const least = new Map<string, Fit['wear'][number]>();
  for (const w of wear) {
    const known = least.get(w.of);
    if (!known || w.left < known.left) least.set(w.of, w);
  }
  return wear.filter((w) => w.read !== null || w.left < 0 || least.get(w.of) === w);
}

/** What is left of each flange and tread, and when that is worn. */
export const wearTable = ({ wear }: Fit, voice: Voice): WordTable => ({
  title: 'Wear: what is left of flanges and treads',
  head: ['wheelset', 'what', 'left', 'reaches it', 'now', 'limit', 'wears a year', 'read', 'limit from'],
  rows: toldOf(wear).map((w) => {
    const thin = w.of === 'flangeThickness';
    return [
      `${w.name}, ${w.wheelset}`,
      wornNames[w.of],
      w.left < 0 ? 'worn out' : length(w.left, voice, 'down'),
      w.reaches === null ? '' : dayText(w.reaches),
      length(w.value, voice, thin ? 'down' : 'up'),
      `at ${thin ? 'least' : 'most'} ${length(w.limit, voice, thin ? 'up' : 'down')}`,
      w.rate === null
        ? w.read !== null && w.read.days > 1
          ? 'grown back: turned?'
          : ''
        : length(yearly(w.rate), voice, 'up'),
      w.read === null
        ? 'no day'
        : `${dayText(w.read.last)}, ${w.read.days} ${w.read.days === 1 ? 'day' : 'days'}`,
      w.source.split(':')[0],
    ];
  }),
  note: 'In proportion to days, by the line through what was read, or its last two days where they wear faster. The host’s sheet, else published practice by gauge. Wheelsets read by days, and the most worn of the rest.',
});

const placed = (
  { lie, at, sparse }: { readonly lie: string; readonly at: number; readonly sparse: boolean },
  voice: Voice,
  own: Fit['at'],
): string => `${lie} at ${chainage(voice, own(at))}${sparse ? ' (few points)' : ''}`;

function holdCells(
  { hold, under }: CrestGap,
  voice: Voice,
): { readonly share: string; readonly held: readonly string[] } {
  if (!hold || !under) return { share: 'face not stated', held: ['', '', ''] };
  const cell = (held: number): string => (held <= 0 ? 'none' : tape(held, voice, 'down'));
  return {
    share: `${Math.floor((100 * Math.max(0, hold.held)) / hold.face)} %`,
    held: [cell(under.empty), cell(under.seated), cell(under.any)],
  };
}

export const crestsTable = ({ gaps, at }: Fit, voice: Voice): WordTable => ({
  title: 'Couplers over crests and sags: where they stand farthest out of line',
  head: [
    'behind',
    'to',
    'of the face',
    'in all',
    'where',
    'stated apart',
    'by the line',
    'by springs',
    'by cant and twist',
    'held empty',
    'as seated',
    'full beside empty',
  ],
  rows: gaps.map((g) => {
    const size = (si: number): string => tape(Math.abs(si), voice, 'up');
    const { share, held } = holdCells(g, voice);
    return [
      g.name,
      g.other,
      share,
      size(Math.abs(g.apart) + g.tilt),
      g.line === 0 && g.tilt === 0 ? '' : placed(g, voice, at),
      g.stated === null ? 'not stated' : size(g.stated),
      size(g.line),
      size(g.springs),
      size(g.tilt),
      ...held,
    ];
  }),
  note: 'Both vehicles placed on the heights of the line as surveyed, trucks at the mean under their axles; tilted by cant and twist between them. Of the face: empty or as seated, whichever holds less. Links and bars are left out. How far each swings, and must: *Couplers*, or `heedway couplers`.',
});

/** Bars and links between pins: how far each end turns up or down, and what is left. */
export const pitchTable = ({ pitches, at }: Fit, voice: Voice): WordTable => {
  const angle = (si: number, toward: 'up' | 'down'): string => say(voice, { si, kind: 'angle' }, toward);
  return {
    title: 'Bars and links over crests and sags: how far they must turn up and down',
    head: ['bar at', 'toward', 'left', 'must turn', 'turns', 'where', 'by the line', 'by their heights'],
    rows: pitches.map((p) => [
      `${p.name}, ${p.end}`,
      p.other,
      p.gives === null ? 'cannot tell' : p.gives < p.needed ? 'none' : angle(p.gives - p.needed, 'down'),
      `${angle(p.needed, 'up')} ${p.way}${p.shanksKnown ? '' : ' (short bar)'}`,
      p.gives === null ? 'not stated' : angle(p.gives, 'down'),
      p.lie === 'level' ? '' : placed(p, voice, at),
      angle(p.line, 'up'),
      p.heightsKnown ? angle(p.stated, 'up') : 'not stated',
    ]),
    note: 'Against the vehicle’s own frame, both vehicles placed on the heights of the line as surveyed; empty or as seated, whichever turns it more.',
  };
};

const radius = (si: number, voice: Voice): string =>
  Number.isFinite(si) ? say(voice, { si, kind: 'length' }, 'up') : 'none does';

/** What hangs low and where a wheel hangs, over this line. */
export const humpsTable = ({ humps, at }: Fit, voice: Voice): WordTable => ({
  title: 'Over crests and sags: what is left under each vehicle',
  head: ['vehicle', 'what', 'left', 'where', 'level, empty', 'springs give', 'rail comes up'],
  rows: humps.flatMap((fit) => [
    ...fit.parts.map((p) => [
      fit.name,
      p.part,
      p.left <= 0 ? 'strikes' : tape(p.left, voice, 'down'),
      placed(p, voice, at),
      tape(p.height, voice, 'down'),
      tape(p.sink, voice, 'up'),
      tape(p.rise, voice, 'up'),
    ]),
    ...(fit.parts.length === 0 && fit.most
      ? [
          [
            fit.name,
            'low parts',
            'cannot tell',
            placed(fit.most, voice, at),
            'not measured',
            '',
            tape(fit.most.rise, voice, 'up'),
          ],
        ]
      : []),
    ...fit.groups.map((g) => [
      fit.name,
      `${g.group}: middle axle`,
      g.hangs > 0
        ? `a wheel hangs ${length(g.hangs, voice, 'up')}`
        : g.travel === undefined
          ? 'cannot tell'
          : 'all bear',
      placed(g, voice, at),
      g.travel === undefined
        ? 'travel not measured'
        : g.travel === Infinity
          ? 'levers let it follow'
          : `travel ${length(g.travel, voice, 'down')}`,
      '',
      length(Math.abs(g.versine), voice, 'up'),
    ]),
  ]),
  note: 'Heights as surveyed, straight between their points. Rail comes up: to the straight line of the frame; of a middle axle, off the line of the outer two.',
});

/** The line's sharpest, and what couplers, low parts and long wheelbases take. */
export const verticalTable = ({ vertical, needs, gaps, at }: Fit, voice: Voice): WordTable => ({
  title: 'Crests and sags: how sharp they are, and how sharp this train takes',
  head: ['what', 'radius', 'crest or sag', 'how'],
  rows: [
    ...vertical.curves.map((c) => [
      `the line at ${chainage(voice, at(c.at))}`,
      say(voice, { si: c.radius, kind: 'length' }, 'down'),
      c.lie,
      c.sparse ? 'few points: level more' : 'as levelled',
    ]),
    ...gaps.flatMap((g) =>
      g.leastRadius === null
        ? []
        : [[`couplers of ${g.name} and ${g.other}`, radius(g.leastRadius, voice), 'both', 'at least']],
    ),
    ...needs.map((n) => [`${n.vehicle}, ${n.what}`, radius(n.radius, voice), n.lie, 'at least']),
  ],
  note:
    vertical.chord > 0
      ? `Of the line by an edge of ${say(voice, { si: vertical.chord, kind: 'length' })}, the longest frame of this train, sharpest first. Couplers: half of the lower face still holds.`
      : 'No vehicle of this train has two guides apart.',
});

const worstOf = ({ judged }: Compared): Judged | undefined =>
  (['refused', 'slow', 'accepted'] as const)
    .map((word) => judged.filter((j) => j.word === word))
    .find((of) => of.length > 0)
    ?.reduce((a, b) => (b.left < a.left ? b : a));

function figure(key: Compared['key'], si: number, voice: Voice, toward: 'up' | 'down'): string {
  const kind = kindOf(key);
  return kind === 'length' ? ofSheet(key)(si, voice, toward) : say(voice, { si, kind }, toward);
}

const partOf = ({ reading: { name, wheelset, end } }: Judged): string =>
  [name, wheelset, end].filter((s) => s !== '').join(', ');

/** Each limit of one sheet with the vehicle that lies nearest to it, or beyond it farthest. */
export const sheetTable = (of: string, compared: readonly Compared[], voice: Voice): WordTable => ({
  title: `Against the sheet of ${of}`,
  head: ['what', 'word', 'has', 'limit', 'nearest', 'where it is written'],
  rows: compared.map((c) => {
    const { key, standard, without } = c;
    const worst = worstOf(c);
    const lacking =
      without.length > 0 ? `not measured: ${[...new Set(without.map((v) => v.name))].join(', ')}` : '';
    if (!worst) return [standardNames[key], lacking || 'no bound stated', '', '', '', standard.source];
    const { found, bound, side, word } = worst;
    return [
      standardNames[key],
      word !== 'refused' && lacking !== '' ? lacking : word,
      figure(key, found, voice, side === 'least' ? 'down' : 'up'),
      `${side === 'least' ? 'at least' : 'at most'} ${figure(key, bound, voice, side === 'least' ? 'up' : 'down')}`,
      partOf(worst),
      standard.source,
    ];
  }),
  ...(compared.length === 0 ? { note: 'It has no limits for wheels, couplers, sizes or loads.' } : {}),
});

/** What each vehicle leaves of the host's profile. */
export const sectionsTable = (sections: Fit['sections'], voice: Voice): WordTable => ({
  title: 'Within the host’s profile',
  head: ['vehicle', 'left', 'where', 'measured', 'where it is written'],
  rows: sections.map(({ name, outlined, section, room, profile }) => [
    name,
    room === null
      ? 'cannot tell'
      : room.left >= 0
        ? tape(room.left, voice, 'down')
        : outlined
          ? `stands out ${tape(-room.left, voice, 'up')}`
          : 'cannot tell: its box stands out',
    room === null
      ? ''
      : `${tape(Math.abs(room.at.x), voice, 'nearest')} from the middle, ${tape(room.at.y, voice, 'nearest')} up`,
    outlined ? 'outline' : section ? 'width and height alone' : 'not measured',
    profile.source,
  ]),
  note: 'On straight level track, people seated. What throw in curves, play and lean take beside it is told by what must be left clear.',
});

/** Several sheets at one look. */
export const sheetsTable = (words: readonly SheetWord[], voice: Voice): WordTable => ({
  title: 'This train under several sheets',
  head: ['sheet', 'word', 'by'],
  rows: words.map(({ host, word, compared, speed }) => [
    host,
    speed === undefined ? word : `slow: ${say(voice, { si: speed, kind: 'speed' }, 'down')}`,
    compared
      .filter((c) => worstOf(c)?.word === word || (word === 'cannot tell' && c.without.length > 0))
      .map(({ key }) => standardNames[key])
      .slice(0, word === 'accepted' ? 0 : undefined)
      .join(', '),
  ]),
});
