/** What a survey import hands back: a line file in plain JSON, notes of what was done, and every problem. */
import type { FileProblem } from '../problem.ts';

export interface Imported {
  /** A line file as plain JSON; undefined where problems forbid one. */
  readonly line?: Record<string, unknown>;
  /** What the import did to the survey, in words. */
  readonly notes: readonly string[];
  readonly advice: readonly Advice[];
  readonly problems: readonly FileProblem[];
}

export type Lengths = 'ft' | 'm';

/** What whoever surveyed it knows and the file does not say: it is read anew so. */
export interface SurveyChoices {
  /** Of lengths whose column does not say its unit. */
  readonly lengths?: Lengths;
  readonly shape?: 'loop' | 'point-to-point';
  /** The way that a radius without a sign turns, where no column tells the hand. */
  readonly bends?: 'left' | 'right';
}

/** What can be chosen otherwise, and what no reading can mend. */
export type Advice = keyof typeof choices | 'transitions' | 'level' | 'curves';

export const choices = {
  loop: { shape: 'loop' },
  'end to end': { shape: 'point-to-point' },
  'to the right': { bends: 'right' },
  'to the left': { bends: 'left' },
} as const satisfies Readonly<Record<string, SurveyChoices>>;

export interface ImportOptions extends SurveyChoices {
  readonly name: string;
  /** As people write it, for the line file. */
  readonly gauge: string;
  /** Hears how much of the work is done, 0 to 1. */
  readonly share?: (done: number) => void;
}
