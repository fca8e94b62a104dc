/**
 * May it leave? Every question asked of one outing, ranked and judged: the one place where an answer is decided.
 * Pure and repeatable: the same outing gives the same answer, byte for byte.
 */
import type { Outing } from '../outing/types.ts';
import { balance } from '../questions/balance/question.ts';
import { haul } from '../questions/haul/question.ts';
import { hold } from '../questions/hold/question.ts';
import { ranked, verdictOf } from '../questions/make.ts';
import type { Care } from '../questions/question.ts';
import { brakingPoints } from '../questions/speed/map.ts';
import { speed } from '../questions/speed/question.ts';
import { inLineChainage } from './chainage.ts';
import { inquire, type OpenInquiry } from './inquiry.ts';
import { questions } from './questions.ts';
import type { Answer } from './types.ts';

/** The answer in the running direction's chainage, without car counts and remedies: they cost most of the time. */
export function firstAnswer(inquiry: OpenInquiry): Answer {
  const findings = ranked(questions.flatMap((question) => inquiry.of(question).findings));
  const { context } = inquiry;
  const { map, models } = inquiry.of(speed).data;
  const { grid, lightest, required, unbounded } = inquiry.of(balance).data.data;
  return {
    verdict: verdictOf(findings),
    findings,
    speeds: map,
    wheels: { at: grid, ...lightest, required: required.value, unknown: unbounded },
    brakingPoints: brakingPoints(context, map, models.cautious),
    cars: [],
    haul: inquiry.of(haul).data,
    hold: inquiry.of(hold).data,
  };
}

/** As a person is told it: in the line's own chainage. */
export const told = ({ context }: OpenInquiry, answer: Answer): Answer =>
  inLineChainage(context.outing, answer);

/** The answer without counts and remedies, in the line's own chainage. */
export function answerOnly(outing: Outing, care: Care = {}): Answer {
  const inquiry = inquire(outing, care);
  return told(inquiry, firstAnswer(inquiry));
}
