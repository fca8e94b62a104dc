/** Partings as tables and sentences, the same on the screen, in the terminal and on paper. */

import {
  frontAt,
  type HalfPlay,
  halfSpeedAt,
  type PartingGap,
  type PartingLook,
  type PartingPlay,
} from '../../desk/parting.ts';
import { outcomes } from '../../engine/questions/part/types.ts';
import { chainWords, outcomeWords } from '../../words/parting.ts';
import type { WordTable } from '../../words/table.ts';
import { chainage, distance, say, type Voice, vehicleAt } from '../../words/voice.ts';

export const gapName = (voice: Voice, gap: number): string => `behind ${vehicleAt(voice, gap)}`;

const speed = (voice: Voice, si: number): string => say(voice, { si, kind: 'speed' }, 'up');
const time = (voice: Voice, si: number): string => say(voice, { si, kind: 'time' });

/** Share of a line, never rounded to all or to nothing where it is neither. */
function share(part: number): string {
  if (part === 0) return '';
  const whole = Math.round(part * 100);
  return `${part < 1 ? Math.min(99, Math.max(1, whole)) : whole} %`;
}

/** One row for each gap: its chain, and what would become of the tail if no chain held. */
export function partingTable({ gaps }: PartingLook, voice: Voice): WordTable {
  const held = gaps.some((g) => g.held);
  const seen = outcomes.filter((o) => gaps.some((g) => g.shares[o] > 0));
  return {
    title: 'If the train parts and no chain holds: share of the line by what becomes of the tail',
    head: [
      'parted',
      'chain',
      ...(held ? ['held by it, the train'] : []),
      ...seen.map((o) => outcomeWords[o]),
      'worst where',
      'fastest',
    ],
    rows: gaps.map((g) => [
      gapName(voice, g.gap),
      chainWords[g.chain],
      ...(held ? [g.held ? outcomeWords[g.held.outcome] : ''] : []),
      ...seen.map((o) => share(g.shares[o])),
      chainage(voice, g.worst.at),
      speed(voice, g.worst.topSpeed),
    ]),
    note: partingNote(voice),
  };
}

/** What the map does not say by itself. */
export function partingNote(voice: Voice): string {
  const { following } = voice.outing;
  const behind = following
    ? `A train follows ${time(voice, following.after)} behind at ${speed(voice, following.speed)} and runs on.`
    : 'No following train is stated.';
  return `Place: the train's head when it parts, at running speed. Brakes as unlucky as in a cautious stop; riders' own brakes are not counted. ${behind}`;
}

/** One parting told from start to end. */
export function playWords(play: PartingPlay, gap: PartingGap | undefined, voice: Voice): string[] {
  const { head, tail } = play;
  const loose = gap?.chainHolds ? ['Followed here as if its chain had not been hung.'] : [];
  const start = `Parts ${gapName(voice, play.gap)} with the head of the train at ${chainage(voice, play.at)} and running ${speed(voice, play.speed)}.`;
  if (play.chained) {
    return [
      start,
      'The chain holds: the train stays whole.',
      halfWords('The train', tail, play, voice),
      brakeWords('train', tail),
    ];
  }
  if (play.together) {
    return [
      start,
      ...loose,
      'The head is braked harder than the tail: they stay together, the tail pushing.',
      halfWords('Both', tail, play, voice),
      brakeWords('train', tail),
    ];
  }
  return [
    start,
    ...loose,
    halfWords('The head', head, play, voice),
    brakeWords('head', head),
    halfWords('The tail', tail, play, voice),
    brakeWords('tail', tail),
    ...(play.contact
      ? [
          `After ${time(voice, play.contact.time)} the tail runs into the head, ${speed(voice, play.contact.speed)} faster than it, unless the head keeps clear.`,
        ]
      : []),
    ...(tail.nearBalance || head.nearBalance
      ? ['Near balance: a small error of the survey or of the resistance may change where it ends.']
      : []),
  ].filter((line) => line !== '');
}

function halfWords(who: string, half: HalfPlay, play: PartingPlay, voice: Voice): string {
  const last = half.front.length - 1;
  const way = half.front[last] - half.front[0];
  const side = Math.sign(way) === play.sense ? 'on' : 'back';
  const length = distance(voice, Math.abs(way), 'up');
  const through = half.outcome === 'rolls-through-place' ? ` (${play.place ?? ''})` : '';
  return `${who}: ${outcomeWords[half.outcome]}${through}, ${length} further ${side}, after ${time(voice, half.time[last])}; fastest ${speed(voice, half.topSpeed)}.`;
}

function brakeWords(who: string, { brakes, leaks }: HalfPlay): string {
  const parts = [
    brakes.left.length > 0
      ? `${brakes.left.join(', ')}${leaks ? ' (holding until leaked off)' : ''}`
      : 'none is left',
    ...(brakes.lost.length > 0 ? [`lost: ${brakes.lost.join(', ')}`] : []),
    ...(brakes.unknown.length > 0 ? [`not known, so counted as lost: ${brakes.unknown.join(', ')}`] : []),
  ];
  return `Brakes that still hold the ${who}: ${parts.join('; ')}.`;
}

/** Positions of both halves every so often: the animation as a table. */
export function playTable(play: PartingPlay, voice: Voice, rows = 8): WordTable {
  const times = Array.from({ length: rows + 1 }, (_, i) => (play.duration * i) / rows);
  const one = play.chained || play.together;
  const at = (half: HalfPlay, t: number): string => {
    const v = halfSpeedAt(half, t);
    return `${chainage(voice, frontAt(half, t))}, ${speed(voice, Math.abs(v))}${v < -1e-3 ? ' back' : ''}`;
  };
  return {
    title: 'In time: front end and speed',
    head: ['after', one ? 'train' : 'head', ...(one ? [] : ['tail'])],
    rows: times.map((t) => [time(voice, t), at(play.head, t), ...(one ? [] : [at(play.tail, t)])]),
  };
}
