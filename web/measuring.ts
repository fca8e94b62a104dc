/** Measured tests beside the page: what readings say, the answer before and after, and what to measure next. */
import { measured } from '../desk/measured/measure.ts';
import { type Told, worthOfTests } from '../desk/measured/next.ts';
import { wholeAnswer } from '../engine/answer/complete.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import type { Answer } from '../engine/answer/types.ts';
import type { Outcome } from '../engine/calibrate/result.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { ReadTest } from '../papers/read-test.ts';

/** What a test says; the same outing with it and without; or what to measure of an outing. */
export type MeasureAsk =
  | { readonly measure: 'test'; readonly test: ReadTest }
  | { readonly measure: 'answers'; readonly outings: readonly Outing[] }
  | { readonly measure: 'next'; readonly outing: Outing };

export interface MeasureReply {
  readonly outcome?: Outcome;
  readonly answers?: readonly Answer[];
  /** One after the other. */
  readonly told?: Told;
  readonly fault?: string;
  readonly last: boolean;
}

export function measure(ask: MeasureAsk, reply: (message: MeasureReply) => void): void {
  try {
    if (ask.measure === 'test') return reply({ outcome: measured(ask.test), last: true });
    if (ask.measure === 'answers') {
      const answer = (outing: Outing): Answer =>
        wholeAnswer(inquire(outing), { remedies: false, counts: 'today' });
      return reply({ answers: ask.outings.map(answer), last: true });
    }
    for (const told of worthOfTests(ask.outing)) reply({ told, last: false });
    reply({ last: true });
  } catch (error) {
    reply({ fault: error instanceof Error ? error.message : String(error), last: true });
  }
}
