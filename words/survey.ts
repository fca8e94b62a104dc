/** What whoever surveyed a line may know better than its file, and what no reading of it mends. */
import type { Advice } from '../papers/import/types.ts';

export interface AdviceWords {
  /** What is asked, or how it is mended. */
  readonly say: string;
  /** On a button: the answer that reads the survey anew. Absent: it can only be measured. */
  readonly button?: string;
  /** The same on the command line. */
  readonly flag?: string;
  /** Where the page helps on. */
  readonly see?: { readonly at: string; readonly words: string };
}

export const adviceWords: Readonly<Record<Advice, AdviceWords>> = {
  loop: { say: 'Do its ends meet?', button: 'It is a loop', flag: '--shape loop' },
  'end to end': {
    say: 'Do its ends not meet?',
    button: 'It runs from end to end',
    flag: '--shape point-to-point',
  },
  'to the right': {
    say: 'Do its radii without a sign turn right?',
    button: 'They turn right',
    flag: '--bends right',
  },
  'to the left': {
    say: 'Do its radii without a sign turn left?',
    button: 'They turn left',
    flag: '--bends left',
  },
  transitions: {
    say: 'Where transitions were laid, write how long they are with each curve of the line, once it is taken.',
  },
  level: {
    say: 'Level at least the steepest place before you rely on any stop: chainage and height, row by row, make a CSV that is read here too.',
  },
  curves: {
    say: 'Measure chord and mid-ordinate of each curve, and write its radius with the curves of the line, once it is taken.',
    see: { at: 'sums/radius-of-versine', words: 'Radius from chord and mid-ordinate' },
  },
};
