/** A record as it is written, read here and reckoned beside the page: what it says, and the outing's answer with it. */
import { useEffect, useState } from 'preact/hooks';
import { tellDifference } from '../../../desk/figures.ts';
import { type Applied, applyToOuting, type Json } from '../../../desk/measured/apply.ts';
import { outingIn, type Stood, stoodAt } from '../../../desk/measured/compare.ts';
import { type MadeWith, readRecord, tellOutcome, withPapers } from '../../../desk/measured/record.ts';
import { notWrittenWords } from '../../../words/measured/applied.ts';
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
  readonly stood?: { readonly was: Stood; readonly now: Stood; readonly differs: string };
  readonly fault?: string;
  readonly last: boolean;
}

/** What is typed rests for so long, ms. */
const REST = 400;

/** @param record undefined: nothing is written yet */
export function useMeasured(record: Json | undefined, made: MadeWith, speech: Speech): Said | undefined {
  const key = JSON.stringify([record, made, speech]);
  const [told, setTold] = useState<{ readonly key: string; readonly said: Said }>();
  useEffect(() => {
    if (!record) return undefined;
    const asking = new AbortController();
    const timer = setTimeout(() => {
      void (async () => {
        for await (const said of measuring(withPapers(record, made), made, speech, asking.signal))
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
  const { outcome, fault } = await asked({ measure: 'test', test: read.value }, signal);
  if (!outcome) {
    yield { ...(fault === undefined ? {} : { fault }), last: true };
    return;
  }
  const lines = tellOutcome(outcome, read.value, speech);
  if (!outcome.ok) {
    yield { lines, last: true };
    return;
  }
  const applied = applyToOuting(made.outing, record, outcome.results, made.vehicle);
  const told = { lines, applied, left: applied.left.map((one) => notWrittenWords(one, speech.wording)) };
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
  const { answers } = await asked({ measure: 'answers', outings: [old.value, fresh.value] }, signal);
  if (!answers) return undefined;
  const [was, now] = [
    stoodAt(before, old.value, answers[0], speech),
    stoodAt(after, fresh.value, answers[1], speech),
  ];
  return was && now ? { was, now, differs: tellDifference(was, now) } : undefined;
}

/** The reply of a worker of its own, which is let go when it is not wanted any more. */
const asked = (ask: MeasureAsk, signal: AbortSignal): Promise<MeasureReply> =>
  new Promise((done) => {
    const stop = aside<MeasureReply>(ask, done, () =>
      done({ fault: 'The readings cannot be reckoned here: the browser starts no worker.', last: true }),
    );
    signal.addEventListener('abort', stop);
  });
