/** What a survey import hands back: a line file in plain JSON, notes of what was done, and every problem. */
import type { FileProblem } from '../problem.ts';

export interface Imported {
  /** A line file as plain JSON; undefined where problems forbid one. */
  readonly line?: Record<string, unknown>;
  /** What the import did to the survey, in words. */
  readonly notes: readonly string[];
  readonly problems: readonly FileProblem[];
}

export type Lengths = 'ft' | 'm';

export interface ImportOptions {
  readonly name: string;
  /** As people write it, for the line file. */
  readonly gauge: string;
  /** Of lengths whose column does not say its unit, by whoever surveyed it. */
  readonly lengths?: Lengths;
  /** Hears how much of the work is done, 0 to 1. */
  readonly share?: (done: number) => void;
}
