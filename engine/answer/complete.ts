/** The whole answer: with car counts and remedies. */
import type { Outing } from '../outing/types.ts';
import type { Care } from '../questions/question.ts';
import { toldRails } from '../things/rail.ts';
import { faultFinding, firstAnswer, judged, told, tried } from './answer.ts';
import { countCars } from './counts.ts';
import { inquire, type OpenInquiry, type QuestionFault } from './inquiry.ts';
import { withRemedies } from './remedies.ts';
import type { Answer } from './types.ts';

export interface AnswerOptions extends Care {
  /** Search for remedies: some tenths of a second more. */
  readonly remedies?: boolean;
  /** Car counts for all rail states, or for the outing's own alone. */
  readonly counts?: boolean | 'today';
  /** Called as numbers of cars are looked at: a sign of life. */
  readonly onCounted?: (looks: number) => void;
  /** Called as changes are tried in the search for remedies. */
  readonly onTried?: (changes: number) => void;
}

/** May it leave? In the line's own chainage. @param written the outing as its papers have it */
export const answerOuting = (written: Outing, options: AnswerOptions = {}): Answer =>
  wholeAnswer(inquire(written, options), options);

/** The same of an outing that is inquired into already, for who asks more of it afterwards. */
export function wholeAnswer(inquiry: OpenInquiry, options: AnswerOptions = {}): Answer {
  const first = firstAnswer(inquiry);
  let answer = told(inquiry, first);
  for (const stage of stages(inquiry, options, first)) answer = stage;
  return answer;
}

/**
 * The answer in growing completeness: with car counts, then with remedies. Each stage is the whole answer so far,
 * for a screen that shows the first while the rest is reckoned.
 */
export function* stages(
  inquiry: OpenInquiry,
  options: AnswerOptions = {},
  first: Answer = firstAnswer(inquiry),
): Generator<Answer> {
  let answer = first;
  /** A fault here leaves the answer as it was, but for its word. */
  const step = (asked: string, next: () => Answer): Answer => {
    const faults = new Map<string, QuestionFault>();
    const after = tried(asked, faults, next) ?? answer;
    answer = judged(after, [...after.findings, ...[...faults.values()].map(faultFinding)]);
    return told(inquiry, answer);
  };
  if (options.counts !== false) {
    const rails =
      options.counts === 'today'
        ? [inquiry.context.written.conditions.railState]
        : toldRails(inquiry.context.written.conditions.railState);
    yield step('counts', () => ({ ...answer, cars: countCars(inquiry, rails, options.onCounted) }));
  }
  if (options.remedies !== false)
    yield step('remedies', () => withRemedies(inquiry, answer, options.onTried));
}
