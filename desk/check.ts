/** May it leave? The whole answer with counts and remedies, in the line's own chainage. */

import { checkOuting as answerOf } from '../engine/answer/check.ts';
import { countCars } from '../engine/answer/counts.ts';
import { withRemedies } from '../engine/answer/remedies.ts';
import type { Answer } from '../engine/answer/types.ts';
import { applyChange, type Change } from '../engine/outing/change.ts';
import type { Outing } from '../engine/outing/types.ts';
import { type Begun, begin, told } from './begun.ts';

export interface CheckOptions {
  /** Search for remedies: some tenths of a second more. */
  readonly remedies?: boolean;
  /** Car counts for all rail states. */
  readonly counts?: boolean;
  /** Called as changes are tried in the search for remedies. */
  readonly onTried?: (changes: number) => void;
}

export function checkOuting(outing: Outing, options: CheckOptions = {}): Answer {
  const begun = begin(outing);
  let answer: Answer | undefined;
  for (const stage of fuller(begun, options)) answer = stage;
  return answer ?? told(begun, begun.answer);
}

/**
 * The answer begun in growing completeness: with car counts, then with remedies. Each stage is the whole
 * answer so far, for a screen that shows the first while the rest is reckoned.
 */
export function* fuller(begun: Begun, options: CheckOptions = {}): Generator<Answer> {
  const { timed, ready, answer } = begun;
  const counts = options.counts ?? true;
  const counted = counts ? { ...answer, cars: countCars(timed, ready.cautiousShare) } : answer;
  if (counts) yield told(begun, counted);
  if (options.remedies !== false) yield told(begun, withRemedies(timed, counted, answerOf, options.onTried));
}

/** The outing after a change, and its answer. */
export function tryChange(
  outing: Outing,
  change: Change,
): { readonly outing: Outing; readonly answer: Answer } {
  const changed = applyChange(outing, change);
  return { outing: changed, answer: checkOuting(changed, { remedies: false }) };
}
