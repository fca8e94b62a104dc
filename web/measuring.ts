/** Measured tests beside the page: what readings say, the answer before and after, and what to measure next. */
import { answersBeside, type Beside } from '../desk/measured/compare.ts';
import { measured } from '../desk/measured/measure.ts';
import { type Told, worthOfTests } from '../desk/measured/next.ts';
import { type Predicted, predictedStops } from '../desk/measured/predicted.ts';
import type { At } from '../desk/measured/stop-parts.ts';
import type { Outcome } from '../engine/calibrate/result.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { ReadTest } from '../papers/read-test.ts';

/** What a test says; the same outing with it and without; or what to measure of an outing. */
export type MeasureAsk =
  | { readonly measure: 'test'; readonly test: ReadTest }
  | { readonly measure: 'answers'; readonly outings: readonly [was: Outing, now: Outing] }
  | { readonly measure: 'next'; readonly outing: Outing; readonly longest?: At };

export interface MeasureReply {
  readonly outcome?: Outcome;
  /** Stops of a stop test beside what the papers say of them. */
  readonly foretold?: readonly Predicted[];
  readonly beside?: Beside;
  /** One after the other. */
  readonly told?: Told;
  readonly fault?: string;
  readonly last: boolean;
}

export function measure(ask: MeasureAsk, reply: (message: MeasureReply) => void): void {
  try {
    if (ask.measure === 'test') {
      const { test, outing } = ask.test;
      const foretold = test.kind === 'stop-test' && outing ? predictedStops(test, outing) : undefined;
      return reply({ outcome: measured(ask.test), ...(foretold ? { foretold } : {}), last: true });
    }
    if (ask.measure === 'answers') return reply({ beside: answersBeside(...ask.outings), last: true });
    for (const told of worthOfTests(ask.outing, ask.longest ? { longest: ask.longest } : {}))
      reply({ told, last: false });
    reply({ last: true });
  } catch (error) {
    reply({ fault: error instanceof Error ? error.message : String(error), last: true });
  }
}
