/**
 * What was asked and what was told, as one value. A word, a card, a code or a table is drawn from a `Told` alone,
 * and a `Told` comes into being only here, where the answer's identity is held against the outing's: an answer
 * beside another outing cannot be written down.
 */

import type { Answer } from '../engine/answer/types.ts';
import type { Change } from '../engine/outing/change.ts';
import type { Outing } from '../engine/outing/types.ts';
import { identityOf } from './identity.ts';

/** Never exported: nobody else can make one. */
declare const made: unique symbol;

/** A change tried on top of the outing. */
export interface Trial {
  readonly change: Change;
  readonly from: Outing;
  readonly to: Outing;
}

/** An outing as it is asked about: its paper, what is tried on it, and what comes of both. */
export interface Asked {
  readonly [made]: 'asked';
  /** Identity of `outing`. */
  readonly id: string;
  /** As written, without what is tried. */
  readonly paper: Readonly<Record<string, unknown>>;
  readonly trials: readonly Trial[];
  /** As tried: what the answer is for. */
  readonly outing: Outing;
}

export interface Reckoned {
  /** Identity of the outing that it was reckoned for. */
  readonly id: string;
  readonly answer: Answer;
}

/** An answer with the outing that it is the answer to. */
export interface Told {
  readonly [made]: 'told';
  readonly asked: Asked;
  readonly answer: Answer;
}

/** @param read the outing that the paper reads as; the trials begin from it */
export function asking(paper: Asked['paper'], read: Outing, trials: readonly Trial[] = []): Asked {
  const outing = trials[trials.length - 1]?.to ?? read;
  return { id: identityOf(outing), paper, trials, outing } as Asked;
}

/** The answer with its outing; null while there is none, or one for another outing. */
export const telling = (asked: Asked | null, reckoned: Reckoned | null | undefined): Told | null =>
  asked && reckoned && asked.id === reckoned.id ? ({ asked, answer: reckoned.answer } as Told) : null;

/** The file that carries it: the outing's own, or with what is tried on it, so that it opens to the same answer. */
export const fileOf = ({ paper, trials }: Asked): Readonly<Record<string, unknown>> =>
  trials.length === 0
    ? paper
    : { heedway: 'tried', version: 1, outing: paper, changes: trials.map((t) => t.change) };
