/** The whole check off the page's thread: the answer at once, then the same with counts and with remedies. */
import { checkInStages } from '../desk/check.ts';
import { timedOuting } from '../desk/timed.ts';
import type { Change } from '../engine/finding/types.ts';
import type { Answer } from '../engine/outing/answer.ts';
import { applyChange } from '../engine/outing/change.ts';
import type { Outing } from '../engine/outing/types.ts';

export interface Ask {
  readonly id: number;
  readonly outing: Outing;
  readonly changes: readonly Change[];
}

export interface Reply {
  readonly id: number;
  readonly answer?: Answer;
  /** With the first answer: the outing with the times of its brakes, for stops at hand. */
  readonly timed?: Outing;
  readonly fault?: string;
  readonly last: boolean;
}

const reply = (message: Reply): void => postMessage(message);
let newest = 0;

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  newest = data.id;
  const outing = data.changes.reduce(applyChange, data.outing);
  reply({ id: data.id, timed: timedOuting(outing), last: false });
  next(data.id, checkInStages(outing));
});

/** One stage after the other; between them a newer question may come in, and this one is dropped. */
function next(id: number, stages: Generator<Answer>): void {
  if (id !== newest) return;
  try {
    const { value, done } = stages.next();
    if (done) reply({ id, last: true });
    else reply({ id, answer: value, last: false });
    if (!done) setTimeout(() => next(id, stages), 0);
  } catch (error) {
    reply({ id, fault: error instanceof Error ? error.message : String(error), last: true });
  }
}
