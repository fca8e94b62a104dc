/** A record as it is written, read here and reckoned beside the page: what it says, and the outing's answer with it. */
import { useEffect, useState } from 'preact/hooks';
import { tellDifference } from '../../../desk/figures.ts';
import { withAlike } from '../../../desk/measured/alike.ts';
import { type Applied, applyToOuting, type Json } from '../../../desk/measured/apply.ts';
import { type BeforeAfter, outingIn, toldBeside } from '../../../desk/measured/compare.ts';
import { keepAsCheck, withForetold } from '../../../desk/measured/foretold.ts';
import type { Predicted } from '../../../desk/measured/predicted.ts';
import { type MadeWith, readRecord, tellOutcome, withPapers } from '../../../desk/measured/record.ts';
import type { Test } from '../../../engine/calibrate/tests/index.ts';
import { notWrittenWords } from '../../../words/measured/applied.ts';
import { predictedWords, stopWords, withWords } from '../../../words/measured/predicted.ts';
import type { Voice } from '../../../words/voice.ts';
import type { MeasureAsk, MeasureReply } from '../../measuring.ts';
import { aside } from '../../parts/aside.ts';

type Speech = Omit<Voice, 'outing'>;

export interface Said {
  /** What cannot be read yet, a line each. */
  readonly unread?: readonly string[];
  /** What the readings say, or why nothing is made of them. */
  readonly lines?: readonly string[];
  /** Results that are not written, and why. */
  readonly left?: readonly string[];
  readonly applied?: Applied;
  readonly stood?: BeforeAfter & { readonly differs: string };
  /** Of a stop test: its stops beside what the papers had said, and the paper with that alone. */
  readonly check?: { readonly lines: readonly string[]; readonly paper: Json };
  readonly fault?: string;
  readonly last: boolean;
}

/** What is typed rests for so long, ms. */
const REST = 400;

/**
 * @param record undefined: nothing is written yet
 * @param likes ids of vehicles built alike that take it over
 */
export function useMeasured(
  record: Json | undefined,
  made: MadeWith,
  speech: Speech,
  likes: readonly string[],
): Said | undefined {
  const key = JSON.stringify([record, made, speech, likes]);
  const [told, setTold] = useState<{ readonly key: string; readonly said: Said }>();
  useEffect(() => {
    if (!record) return undefined;
    const asking = new AbortController();
    const timer = setTimeout(() => {
      void (async () => {
        for await (const said of measuring(withPapers(record, made), made, speech, likes, asking.signal))
          if (!asking.signal.aborted) setTold({ key, said });
      })();
    }, REST);
    return () => {
      clearTimeout(timer);
      asking.abort();
    };
  }, [key]);
  return told?.key === key ? told.said : undefined;
}

async function* measuring(
  record: Json,
  made: MadeWith,
  speech: Speech,
  likes: readonly string[],
  signal: AbortSignal,
): AsyncGenerator<Said> {
  const read = await readRecord(record);
  if (!read.ok) {
    yield {
      unread: read.problems.map((p) => `${p.path}: found ${p.found}; expected ${p.expected}`),
      last: true,
    };
    return;
  }
  const { outcome, foretold, fault } = await asked({ measure: 'test', test: read.value }, signal);
  if (!outcome) {
    yield { ...(fault === undefined ? {} : { fault }), last: true };
    return;
  }
  const kept = withForetold(record, foretold);
  const lines = tellOutcome(outcome, read.value, speech);
  const check = foretold && {
    lines: checkLines(foretold, read.value.test, speech),
    paper: keepAsCheck(made.outing, kept),
  };
  if (!outcome.ok) {
    yield { lines, ...(check ? { check } : {}), last: true };
    return;
  }
  const results = withAlike(outcome.results, likes);
  const applied = applyToOuting(made.outing, kept, results, made.vehicle, likes);
  const left = applied.left.map((one) => notWrittenWords(one, speech.wording));
  const told = { lines, applied, left, ...(check ? { check } : {}) };
  yield { ...told, last: applied.written.length === 0 };
  if (applied.written.length === 0) return;
  const stood = await stoodWith(made.outing, applied.paper, speech, signal);
  yield { ...told, ...(stood ? { stood } : {}), last: true };
}

async function stoodWith(
  before: Json,
  after: Json,
  speech: Speech,
  signal: AbortSignal,
): Promise<Said['stood']> {
  const [old, fresh] = await Promise.all([outingIn(before), outingIn(after)]);
  if (!old.ok || !fresh.ok) return undefined;
  const outings = [old.value, fresh.value] as const;
  const { beside } = await asked({ measure: 'answers', outings }, signal);
  const told = beside && toldBeside([before, after], outings, beside, speech);
  return told && { ...told, differs: tellDifference(told.was, told.now) };
}

function checkLines(stops: readonly Predicted[], test: Test, { system }: Speech): string[] {
  const brakes = test.kind === 'stop-test' ? withWords(test.brakes) : undefined;
  return [
    predictedWords(stops),
    ...(brakes === undefined ? [] : [brakes]),
    ...stops.map((s) => stopWords(s, { system })),
  ];
}

/** The reply of a worker of its own, which is let go when it is not wanted any more. */
const asked = (ask: MeasureAsk, signal: AbortSignal): Promise<MeasureReply> =>
  new Promise((done) => {
    const stop = aside<MeasureReply>(ask, done, () =>
      done({ fault: 'The readings cannot be reckoned here: the browser starts no worker.', last: true }),
    );
    signal.addEventListener('abort', stop);
  });
