/** The answer as far as a person needs it first: verdict, findings and speeds; counts and remedies follow (`check.ts`). */

import { answerPrepared } from '../engine/answer/check.ts';
import type { Answer } from '../engine/answer/types.ts';
import { type Prepared, prepare } from '../engine/motion/prepare.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { ranked, verdictOf } from '../engine/questions/make.ts';
import { lookAtBrakes } from './brakes.ts';
import { inLineChainage } from './chainage.ts';
import { timedOuting } from './timed.ts';

export interface Begun {
  readonly outing: Outing;
  /** With the times of its brakes, as the engine reckons with. */
  readonly timed: Outing;
  readonly ready: Prepared;
  /** In chainage of the running direction. */
  readonly answer: Answer;
  /** Of the brakes looked at part by part. */
  readonly brakes: readonly Finding[];
}

/** @param timed the outing with the times of its brakes, where they are known already */
export function begin(outing: Outing, timed = timedOuting(outing)): Begun {
  if (timed.train.vehicles.length === 0) throw new RangeError('a train needs at least one vehicle');
  const ready = prepare(openOuting(timed));
  return { outing, timed, ready, answer: answerPrepared(ready), brakes: lookAtBrakes(outing).findings };
}

/**
 * An answer as told: in the line's own chainage, with the look at the brakes' parts. That look stands outside
 * the search for remedies, which re-asks only what the changes touch.
 */
export function told({ outing, brakes }: Begun, answer: Answer): Answer {
  const turned = inLineChainage(outing, answer);
  const findings = ranked([...turned.findings, ...brakes]);
  return { ...turned, findings, verdict: verdictOf(findings) };
}
