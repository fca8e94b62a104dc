/** May it leave? The answer with its remedies, in the line's own chainage. */

import { ranked, verdictOf } from '../engine/finding/make.ts';
import type { Change } from '../engine/finding/types.ts';
import type { Answer } from '../engine/outing/answer.ts';
import { applyChange } from '../engine/outing/change.ts';
import { checkOuting as answerOf, answerPrepared } from '../engine/outing/check.ts';
import { openOuting } from '../engine/outing/context.ts';
import { countCars } from '../engine/outing/counts.ts';
import { withRemedies } from '../engine/outing/remedies.ts';
import type { Outing } from '../engine/outing/types.ts';
import { prepare } from '../engine/stopping/prepare.ts';
import { lookAtBrakes } from './brakes.ts';
import { inLineChainage } from './chainage.ts';
import { timedOuting } from './timed.ts';

export interface CheckOptions {
  /** Search for remedies: some tenths of a second more. */
  readonly remedies?: boolean;
  /** Car counts for all rail states. */
  readonly counts?: boolean;
  /** Called as changes are tried in the search for remedies. */
  readonly onTried?: (changes: number) => void;
}

export function checkOuting(outing: Outing, options: CheckOptions = {}): Answer {
  let answer: Answer | undefined;
  for (const stage of checkInStages(outing, options)) answer = stage;
  return answer as Answer;
}

/**
 * The answer in growing completeness: without car counts, with them, with remedies. Each stage is the whole
 * answer so far, for a screen that shows the first while the rest is reckoned.
 */
export function* checkInStages(outing: Outing, options: CheckOptions = {}): Generator<Answer> {
  const timed = timedOuting(outing);
  if (timed.train.vehicles.length === 0) throw new RangeError('a train needs at least one vehicle');
  const ready = prepare(openOuting(timed));
  const told = (answer: Answer): Answer => withBrakeLook(outing, inLineChainage(outing, answer));
  const first = answerPrepared(ready, { counts: false });
  yield told(first);
  const counts = options.counts ?? true;
  const counted = counts ? { ...first, cars: countCars(timed, ready.cautiousShare) } : first;
  if (counts) yield told(counted);
  if (options.remedies !== false) yield told(findRemedies(timed, counted, options.onTried));
}

/** The brakes looked at part by part. Outside the search for remedies, which re-asks only what the changes touch. */
function withBrakeLook(outing: Outing, answer: Answer): Answer {
  const findings = ranked([...answer.findings, ...lookAtBrakes(outing).findings]);
  return { ...answer, findings, verdict: verdictOf(findings) };
}

/** Remedies for an answer in the running direction. */
function findRemedies(outing: Outing, answer: Answer, onTried?: (changes: number) => void): Answer {
  return withRemedies(outing, answer, (changed) => answerOf(changed, { counts: false }), onTried);
}

/** The outing after a change, and its answer. */
export function tryChange(
  outing: Outing,
  change: Change,
): { readonly outing: Outing; readonly answer: Answer } {
  const changed = applyChange(outing, change);
  return { outing: changed, answer: checkOuting(changed, { remedies: false }) };
}
