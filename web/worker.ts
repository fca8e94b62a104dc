/** The whole check off the page's thread: the answer at once, then the same with counts and with remedies. */
import { begin, told } from '../desk/begun.ts';
import { timedOuting } from '../desk/timed.ts';
import type { Answer } from '../engine/answer/types.ts';
import type { Outing } from '../engine/outing/types.ts';

export interface Ask {
  readonly id: number;
  readonly outing: Outing;
}

export interface Reply {
  readonly id: number;
  readonly answer?: Answer;
  /** Before the first answer: the outing with the times of its brakes, for stops at hand. */
  readonly timed?: Outing;
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
    const timed = timedOuting(outing);
    reply({ id, timed, last: false });
    const begun = begin(outing, timed);
    reply({ id, answer: told(begun, begun.answer), last: false });
    // What the first answer does not need is loaded after it.
    const { fuller } = await import('../desk/check.ts');
    const stages = fuller(begun);
    for (;;) {
      await new Promise((ready) => setTimeout(ready, 0));
      if (id !== newest) return;
      const { value, done } = stages.next();
      if (done) break;
      reply({ id, answer: value, last: false });
    }
    reply({ id, last: true });
  } catch (error) {
    reply({ id, fault: error instanceof Error ? error.message : String(error), last: true });
  }
}
