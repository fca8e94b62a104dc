/**
 * A question: what it reads of an outing, which findings it can make, and how it is asked. It is described once,
 * here and in its room; the list in `answer/questions.ts` is the only wiring.
 */
import type { Prepared } from '../motion/prepare.ts';
import type { OutingContext } from '../outing/open.ts';
import type { Outing } from '../outing/types.ts';
import type { FactKinds } from './facts.ts';
import type { Finding } from './finding.ts';
import type { FindingCode } from './findings.ts';
import type { SpeedReason } from './speed/types.ts';

/** What a question hands in: what it has to say, and the figures behind it that others start from. */
export interface Findings<T> {
  readonly findings: readonly Finding[];
  readonly data: T;
}

/** A part of an outing that a change may touch. `train`: all of it but its safety chains, which are `chains`. */
export type Part = Exclude<keyof Outing, 'name' | 'date'> | 'chains';

/** How closely one looks. Absent: as an answer is told. */
export interface Care {
  /** m between the places of the potential */
  readonly step?: number;
  /** Stops drawn to set the cautious scenario. */
  readonly samples?: number;
  /** Runs behind each peak in the couplings. */
  readonly couplerRuns?: number;
}

/** One opened outing and all that was asked of it so far: each question at most once, and only when needed. */
export interface Inquiry {
  readonly context: OutingContext;
  readonly ready: Prepared;
  readonly care: Care;
  /** What a question found, asked now if it was not yet. */
  readonly of: <T>(question: Question<T>) => Findings<T>;
}

export interface Question<T> {
  readonly id: string;
  /** Unchanged by reference, and so what it asked others: its last word stands. */
  readonly reads: readonly Part[];
  /** What it can find: codes, and the kinds of their facts. */
  readonly findings: Readonly<Partial<Record<FindingCode, FactKinds>>>;
  readonly ask: (inquiry: Inquiry) => Findings<T>;
}

/** A speed that a reason allows, by chainage of the train's head, on the grid of the speed map. */
export interface Ceiling {
  readonly reason: SpeedReason;
  /** m/s per grid point; Infinity where this reason does not bind. */
  readonly speed: Float64Array;
}
