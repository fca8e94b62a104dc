/** What is left beside and over the track as tables, the same on the screen and in the terminal. */
import { besideCurve, type Clear } from '../../desk/clear.ts';
import type { Stood } from '../../desk/stood.ts';
import type { Passing, Spread } from '../../engine/questions/clearance/look.ts';
import { tape } from '../../words/calliper.ts';
import { notToldWords, unmeasuredWords } from '../../words/not-told.ts';
import type { WordTable } from '../../words/table.ts';
import { chainage, say, type Voice } from '../../words/voice.ts';

const length = (voice: Voice, si: number, toward: 'up' | 'down'): string =>
  say(voice, { si, kind: 'length' }, toward);

/** What is left, with the play at its most; rounded down. */
function leftCell(spread: Spread | null, voice: Voice): string {
  if (!spread || !Number.isFinite(spread.high.left)) return '—';
  const { left } = spread.high;
  return left < 0 ? `${tape(-left, voice, 'up')} short` : tape(left, voice, 'down');
}

const stands = (room: { readonly high: { readonly leaves: number } } | null, voice: Voice): string =>
  room ? tape(room.high.leaves, voice, 'down') : '—';

function row(passing: Passing, clear: Clear, voice: Voice): string[] {
  const { structure, side, name, body, people } = passing;
  const room = body ?? people;
  return [
    structure.name,
    side === 'over' ? 'over' : side,
    leftCell(body, voice),
    leftCell(people, voice),
    room ? chainage(voice, clear.at(room.high.at)) : chainage(voice, clear.at(structure.from)),
    stands(room, voice),
    room ? tape(room.high.takes, voice, 'up') : '—',
    name,
  ];
}

export const structuresTable = (clear: Clear, voice: Voice): WordTable => ({
  title: 'What stands beside and over the line, and what this train leaves of it',
  head: ['what', 'side', 'left', 'left of people', 'where', 'stands', 'takes', 'nearest'],
  rows: clear.nearest.map((passing) => row(passing, clear, voice)),
  note:
    clear.structures.length === 0
      ? 'The line states nothing beside or over it: nothing is measured.'
      : 'From the middle of the track, or above the rail. Sides in the running direction. With the wheels hard over in their play; sway in it where springs were measured.',
});

/** None where nobody calls a structure a platform. */
export const platformsTables = (clear: Clear, voice: Voice): WordTable[] =>
  clear.platforms.length === 0
    ? []
    : [
        {
          title: 'Stepping across at platforms',
          head: ['platform', 'side', 'widest gap', 'where', 'of', 'step'],
          rows: clear.platforms.map(({ platform, side, gap, name, step }) => [
            platform.name,
            side,
            gap.value < 0 ? 'none: it strikes' : length(voice, gap.value, 'up'),
            chainage(voice, clear.at(gap.at)),
            name,
            Math.abs(step) < 5e-4
              ? 'level'
              : `${length(voice, Math.abs(step), 'up')} ${step > 0 ? 'up' : 'down'}`,
          ]),
          note: 'From the edge of the platform to what riders step on, at any seat, wherever along it the train stands; wheels over to the other rail, springs as they may sink. Up: onto the train.',
        },
      ];

export const curvesTable = (clear: Clear, voice: Voice): WordTable => ({
  title: 'What this train must be left clear, from the middle of the track',
  head: ['where', 'radius', 'hand', 'inside', 'outside'],
  rows: [
    ...(clear.straight === undefined
      ? []
      : [['straight', '', '', tape(clear.straight, voice, 'up'), tape(clear.straight, voice, 'up')]]),
    ...clear.curves.map((c) => {
      const [from, to] = [clear.at(c.from), clear.at(c.to)].sort((a, b) => a - b);
      return [
        `${chainage(voice, from)} to ${chainage(voice, to)}`,
        length(voice, c.radius, 'down'),
        c.hand,
        tape(c.inside, voice, 'up'),
        tape(c.outside, voice, 'up'),
      ];
    }),
  ],
  note: noteOf(clear, voice),
});

function noteOf({ kept, curves, notTold }: Clear, voice: Voice): string {
  if (!kept) return `Cannot tell. ${notToldWords(notTold, voice)}`;
  const left =
    notTold.unmeasured.length > 0
      ? ` Without ${notTold.unmeasured.join(', ')}, so that it may be too little. ${unmeasuredWords(notTold.unmeasured, voice)}`
      : '';
  const reach =
    curves.length === 0
      ? ''
      : ` What a curve asks for is wanted as far as ${length(voice, besideCurve(kept), 'up')} before and after it.`;
  return `Of its widest vehicle, people seated; throw, play of the wheels and lean in it, and the host’s own margin on top.${reach}${left}`;
}

/** Where a train in a siding stands clear of the line. */
export const sidingsTable = (clear: Clear, voice: Voice): WordTable => ({
  title: `Sidings: where this train stands clear of the line`,
  head: ['siding', 'side', 'this train', 'clear from', 'to', 'usable', 'room midway'],
  rows: clear.sidings.map(({ siding, clear: room, least, without }) => {
    if (room === undefined) return [siding.name, siding.side, lacksOf(without), '', '', '', ''];
    if (room === null) return [siding.name, siding.side, 'does not fit', 'nowhere', '', '', ''];
    const [from, to] = [clear.at(room.from), clear.at(room.to)].sort((a, b) => a - b);
    const usable = room.to - room.from;
    return [
      siding.name,
      siding.side,
      `${length(voice, clear.trainLength, 'up')}: ${usable >= clear.trainLength ? 'fits' : 'does not fit'}`,
      chainage(voice, from, 'up'),
      chainage(voice, to, 'down'),
      length(voice, usable, 'down'),
      least === undefined ? '—' : length(voice, least, 'down'),
    ];
  }),
  note: `By the line’s own chainage. A train of this kind may pass on the line meanwhile, with ${length(voice, clear.margin.value, 'up')} between the two at the least (${clear.margin.source}); room midway: what is left beside this train where it stands in the middle.${
    clear.sidings.some((s) => s.clear === undefined && s.without !== '')
      ? ` ${unmeasuredWords(clear.notTold.unmeasured, voice)}`
      : ''
  }`,
});

const lacksOf = (without: string): string =>
  without === '' ? 'cannot tell: measure its sharpest curve' : 'cannot tell: measure the vehicles';

/** Less than this is in the middle to any tape, m. */
const MIDWAY = 5e-4;

/** How far each vehicle hangs over where the train stands. */
export const stoodTable = ({ vehicles, at }: Stood, voice: Voice): WordTable => {
  const off = (aside: number): string =>
    Math.abs(aside) < MIDWAY
      ? 'in the middle'
      : `${tape(Math.abs(aside), voice, 'up')} ${aside > 0 ? 'left' : 'right'}`;
  return {
    title: `How far each vehicle hangs over, the front of the train at ${chainage(voice, at)}`,
    head: ['vehicle', 'front end', 'middle', 'rear end'],
    rows: vehicles.map((v, i) =>
      v
        ? [v.name, off(v.hang.front), off(v.hang.middle), off(v.hang.rear)]
        : [`${i + 1}`, 'cannot stand here', '', ''],
    ),
    note: 'Its own middle line from the middle of the track, wheels midway between the rails: drop a plumb line and read it. Play, lean and sway come on top; the tables of what is left have them in.',
  };
};
