/** Why nothing was made of a log, what was made of it, and how far that may be off. */
import { chainage, say, type Voice } from '../voice.ts';

type Reading = Readonly<Record<string, unknown>>;

/** Figures of a reading made of a log stand in SI. */
const si = (written: unknown): number => Number.parseFloat(`${written}`);

/** "From 320 ft at 7.1 mph: at rest at 353 ft." */
export function readingWords(
  { from, speed, restAt, time, passes }: Reading,
  shown: Pick<Voice, 'system'>,
): string {
  const start = `From ${chainage(shown, si(from))}${speed === undefined ? '' : ` at ${say(shown, { si: si(speed), kind: 'speed' })}`}`;
  if (restAt !== undefined)
    return `${start}: at rest at ${chainage(shown, si(restAt))}${time === undefined ? '' : ` after ${say(shown, { si: si(time), kind: 'time' })}`}.`;
  const marks = (passes ?? []) as readonly Reading[];
  const last = marks[marks.length - 1];
  return `${start}: ${marks.length} readings${last ? ` to ${chainage(shown, si(last['at']))}` : ''}.`;
}

const faults = {
  'too-short':
    'Between the seconds that you named the log has too few rows of a train that runs: look at them.',
  'no-begin': 'The log does not say when the brake was put on, or the signal given: name that second of it.',
  'not-at-rest':
    'The log does not end with the train at rest: leave the phone where it lies until it has stood for some seconds.',
  'no-level':
    'What a phone felt says nothing without its level: log it lying on level track, and once more turned half round on the same spot.',
  'not-level':
    'The phone lay otherwise than where it was set level: fix it, set level both ways round, and stop again.',
  'upside-down': 'The phone lay upside down, or level was never set: lay it level, set it, and stop again.',
  'weight-off':
    'Standing, the phone does not feel its weight: look at the units, and whether gravity is left out of the log.',
  'not-slowing': 'The phone felt nothing slow the train between the seconds that you named: look at them.',
  'no-coast-by-feel': 'A coast is too gentle for what a phone feels: log its speed or its places.',
} as const;

export const logFault = (fault: keyof typeof faults): string => faults[fault];

const sources = {
  satellites:
    'Satellites tell a place to some metres and wander slowly: taken as 8 m off each 5 s, and a second in time; the fit is as wide as that. Tape and stopwatch tell far more.',
  distance: 'Places as the log has them, with the errors of a tape.',
  speed:
    'Speeds as the log has them, and the way summed up of them: taken as 7 in a hundred off throughout, until the speedometer is checked.',
  felt: 'Speed and way summed up of what the phone felt, back from rest: taken as 5 and 8 in a hundred off throughout.',
} as const;

export const logErrors = (of: keyof typeof sources): string => sources[of];

export const gradeWords = (change: number): string =>
  `The line rises ${change > 0 ? 'more' : 'less'} by ${(Math.abs(change) * 100).toFixed(1)} % where it came to rest than where the brake was put on, and a phone feels that as if it were the brake: stop where the rail lies evenly.`;
