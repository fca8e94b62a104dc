/** The plan's words and figures in a voice. */
import { FOOT } from '../../engine/base/constants.ts';
import { tape } from '../../words/calliper.ts';
import { chainage, distance, type Voice } from '../../words/voice.ts';
import type { StripWords } from '../strip/model.ts';
import { stripWords } from '../strip/words.ts';
import type { Misclosure } from './lay.ts';
import type { MarkOnPlan } from './marks.ts';

export interface PlanWords
  extends Pick<StripWords, 'chainage' | 'length' | 'radius' | 'place' | 'left' | 'right'> {
  readonly plan: string;
  readonly north: string;
  misses(by: Misclosure, open: boolean): string;
  /** What stands at a mark, and what it is for those who point at it. */
  mark(mark: MarkOnPlan): string;
  markFully(mark: MarkOnPlan): string;
  /** What the strokes and crosses are. */
  marks(marks: readonly MarkOnPlan[]): readonly string[];
  /** The greatest round length that is not longer, m. */
  scaleLength(most: number): number;
}

const degrees = (rad: number): number => Math.abs(Math.round((rad * 180) / Math.PI));

export function planWords(voice: Voice): PlanWords {
  const unit = voice.system === 'imperial' ? FOOT : 1;
  return {
    ...stripWords(voice),
    plan: 'Plan',
    north: 'Which way north lies is not surveyed.',
    misses: ({ away, turned, whole }, open) => {
      const ends = `As written the curves turn ${degrees(turned)}°, not ${degrees(whole)}°, and the loop ends ${distance(voice, away, 'nearest')} from its start`;
      return open ? `${ends}: it is drawn open.` : `${ends}: it is drawn bent to close.`;
    },
    mark: ({ kind, at, name, left = 0 }) =>
      kind === 'end'
        ? chainage(voice, at, 'nearest')
        : `${name}: ${left < 0 ? 'strikes' : tape(left, voice, 'down')}`,
    markFully: ({ kind, at, name, left = 0 }) =>
      kind === 'end'
        ? `${name}: an end may stand at ${chainage(voice, at)}`
        : left < 0
          ? `${name}: it strikes at ${chainage(voice, at)}, by ${tape(-left, voice, 'up')}`
          : `${name}: ${tape(left, voice, 'down')} left at ${chainage(voice, at)}`,
    marks: (marks) => [
      ...(marks.some((m) => m.kind === 'end')
        ? [
            'Strokes across a track: an end of this train may stand there, no nearer to the points; by that track’s own distances.',
          ]
        : []),
      ...(marks.some((m) => m.kind === 'near')
        ? ['Crosses: where least is left beside or over the train.']
        : []),
    ],
    scaleLength: (most) => {
      const figures = [1, 2, 5].flatMap((n) => [1, 10, 100, 1000].map((ten) => n * ten));
      return Math.max(unit, ...figures.map((n) => n * unit).filter((m) => m <= most));
    },
  };
}

/** Where there is no plan. */
export const NO_PLAN = 'No plan: nobody has written where the curves of the line lie.';
