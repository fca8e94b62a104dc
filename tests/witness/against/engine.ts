/** The engine's own word on an outing, as the witness's checks ask for it. */
import { firstAnswer } from '../../../engine/answer/answer.ts';
import { inquireInto } from '../../../engine/answer/inquiry.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import { modelOf } from '../../../engine/motion/model.ts';
import { type Prepared, prepare } from '../../../engine/motion/prepare.ts';
import { likely } from '../../../engine/motion/scenario.ts';
import { stopDistance } from '../../../engine/motion/stop.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';

export interface StopWord {
  /** With the times of its brakes: the plain data that both reckon with. */
  readonly outing: Outing;
  readonly ready: Prepared;
  /** m; Infinity: it does not stop. */
  readonly likelyStop: (at: number, speed: number) => number;
}

export interface Word extends StopWord {
  readonly answer: Answer;
}

/** Of its stops alone. */
export function stopWord(of: Outing): StopWord {
  const context = openOuting(of);
  const { outing } = context;
  const ready = prepare(context);
  const model = modelOf(ready.inputs(outing.conditions.railState), likely, false);
  return { outing, ready, likelyStop: (at, speed) => stopDistance(model, at, speed) };
}

export function engineWord(of: Outing): Word {
  const word = stopWord(of);
  // Few runs of the couplers: nothing here looks at them.
  return { ...word, answer: firstAnswer(inquireInto(word.ready.context, { couplerRuns: 3 })) };
}
