/** The whole check off the page's thread: the answer at once, then the same with counts and with remedies. */
import { firstAnswer, told } from '../engine/answer/answer.ts';
import { inquireInto } from '../engine/answer/inquiry.ts';
import type { Answer } from '../engine/answer/types.ts';
import { openTimed, type TimedOuting, timeOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';

export interface Ask {
  readonly id: number;
  readonly outing: Outing;
}

export interface Reply {
  readonly id: number;
  readonly answer?: Answer;
  /** Before the first answer: the outing with the times of its brakes, for stops at hand. */
  readonly timed?: TimedOuting;
  readonly fault?: string;
  readonly last: boolean;
}

const reply = (message: Reply): void => postMessage(message);
let newest = 0;

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  newest = data.id;
  void work(data);
});

/** One stage after the other; between them a newer question may come in, and this one is dropped. */
async function work({ id, outing }: Ask): Promise<void> {
  try {
    const timed = timeOuting(outing);
    reply({ id, timed, last: false });
    const inquiry = inquireInto(openTimed(timed));
    reply({ id, answer: told(inquiry, firstAnswer(inquiry)), last: false });
    // What the first answer does not need is loaded after it.
    const { stages } = await import('../engine/answer/complete.ts');
    const fuller = stages(inquiry);
    for (;;) {
      await new Promise((ready) => setTimeout(ready, 0));
      if (id !== newest) return;
      const { value, done } = fuller.next();
      if (done) break;
      reply({ id, answer: value, last: false });
    }
    reply({ id, last: true });
  } catch (error) {
    reply({ id, fault: error instanceof Error ? error.message : String(error), last: true });
  }
}
