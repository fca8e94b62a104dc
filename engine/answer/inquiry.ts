/**
 * Asking one outing: each question at most once, when it is needed. After a change, the last word of a question
 * stands if nothing that it reads has changed, nor what it asked others.
 */
import { type Prepared, prepare } from '../motion/prepare.ts';
import { type OutingContext, openOuting } from '../outing/open.ts';
import type { Outing } from '../outing/types.ts';
import type { Care, Findings, Inquiry, Part, Question } from '../questions/question.ts';
import { sameButChains, sameChains } from '../things/train/chains.ts';

/** A fault inside a question. Those that start from its figures have no word either; it is told once. */
export class QuestionFault extends Error {
  readonly asked: string;
  constructor(asked: string, fault: unknown) {
    super(fault instanceof Error ? fault.message : String(fault));
    this.asked = asked;
  }
}

interface Asked {
  readonly said: Findings<unknown>;
  /** Questions that this one asked in its turn. */
  readonly others: ReadonlySet<Question<unknown>>;
}

/** An inquiry whose answered questions can be looked over by the next. */
export interface OpenInquiry extends Inquiry {
  readonly asked: ReadonlyMap<Question<unknown>, Asked>;
}

/** What a stop is made ready from: unchanged, it is not made ready again. */
const STOPS: readonly Part[] = [
  'line',
  'train',
  'riders',
  'conditions',
  'direction',
  'host',
  'plannedSpeed',
  'assumed',
];
/** What a train is opened from. */
const TRAIN: readonly Part[] = ['line', 'train', 'chains', 'riders', 'conditions', 'direction', 'assumed'];

const same = (a: Outing, b: Outing, parts: readonly Part[]): boolean =>
  parts.every((p) =>
    p === 'chains'
      ? sameChains(a.train, b.train)
      : p === 'train'
        ? sameButChains(a.train, b.train)
        : a[p] === b[p],
  );

/**
 * @param written the outing as its papers have it
 * @param before an inquiry into an outing that this one was changed from
 */
export function inquire(written: Outing, care: Care = {}, before?: OpenInquiry): OpenInquiry {
  return inquireInto(opened(written, before), care, before);
}

/** Of an outing that is open already. */
export function inquireInto(context: OutingContext, care: Care = {}, before?: OpenInquiry): OpenInquiry {
  const { written } = context;
  const asked = new Map<Question<unknown>, Asked>();
  const failed = new Map<Question<unknown>, QuestionFault>();
  const stays = new Map<Question<unknown>, boolean>();
  let ready: Prepared | undefined;

  const stands = (question: Question<unknown>): boolean => {
    const known = stays.get(question);
    if (known !== undefined) return known;
    const last = before?.asked.get(question);
    const standing =
      before !== undefined &&
      last !== undefined &&
      same(before.context.written, written, question.reads) &&
      [...last.others].every(stands);
    stays.set(question, standing);
    return standing;
  };

  const inquiryOf = (others: Set<Question<unknown>>): Inquiry => ({
    context,
    care,
    get ready() {
      // What it was made ready from is the same; what else it tells of the outing is of this one.
      ready ??=
        before && same(before.context.written, written, STOPS)
          ? { ...before.ready, context }
          : prepareWith(context, care);
      return ready;
    },
    of: <T>(question: Question<T>): Findings<T> => {
      others.add(question);
      return answerOf(question) as Findings<T>;
    },
  });

  const answerOf = (question: Question<unknown>): Findings<unknown> => {
    const known = asked.get(question);
    if (known) return known.said;
    // Others that start from its figures fail as it did: it is not asked again for each.
    const fault = failed.get(question);
    if (fault) throw fault;
    const last = stands(question) ? before?.asked.get(question) : undefined;
    const others = new Set<Question<unknown>>();
    const now = last ?? { said: askSafely(question, inquiryOf(others), failed), others };
    asked.set(question, now);
    return now.said;
  };

  const top = inquiryOf(new Set());
  return Object.defineProperties({ asked } as unknown as OpenInquiry, Object.getOwnPropertyDescriptors(top));
}

/** @throws QuestionFault which is kept */
function askSafely(
  question: Question<unknown>,
  inquiry: Inquiry,
  failed: Map<Question<unknown>, QuestionFault>,
): Findings<unknown> {
  try {
    return question.ask(inquiry);
  } catch (thrown) {
    const fault = thrown instanceof QuestionFault ? thrown : new QuestionFault(question.id, thrown);
    failed.set(question, fault);
    throw fault;
  }
}

const prepareWith = (context: OutingContext, { step, samples }: Care): Prepared =>
  prepare(context, step, samples);

/** Opened anew only where the train or what its brakes' times rest on has changed. */
function opened(written: Outing, before?: OpenInquiry): OutingContext {
  if (!before || !same(before.context.written, written, TRAIN)) return openOuting(written);
  const { train } = before.context.outing;
  return { ...before.context, written, outing: { ...written, train } };
}
