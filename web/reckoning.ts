/** The whole check in stages: the answer at once, then the same with counts and with remedies. */
import { firstAnswer, told } from '../engine/answer/answer.ts';
import { inquireInto, type OpenInquiry } from '../engine/answer/inquiry.ts';
import type { Answer } from '../engine/answer/types.ts';
import type { Caution } from '../engine/motion/scenario.ts';
import { openTimed, type TimedOuting, timeOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';

export interface Ask {
  /** Which question it is. */
  readonly id: number;
  readonly outing: Outing;
}

export interface Reply {
  readonly id: number;
  readonly answer?: Answer;
  /** Before the first answer: the outing with the times of its brakes, for stops at hand. */
  readonly timed?: TimedOuting;
  /** With the first answer: what stands for one stop in a hundred, so that stops at hand need not seek it again. */
  readonly caution?: Caution;
  readonly fault?: string;
  readonly last: boolean;
}

/** Between two signs of life, ms: far below what is taken for silence. */
const ALIVE = 1000;

/** Answers one question after the other; a newer one drops the older between two stages. */
export function reckoner(reply: (message: Reply) => void): (ask: Ask) => Promise<void> {
  let newest: Ask | undefined;
  return async (ask) => {
    newest = ask;
    const { id, outing } = ask;
    try {
      const timed = timeOuting(outing);
      reply({ id, timed, last: false });
      const inquiry = inquireInto(openTimed(timed));
      const first = firstAnswer(inquiry);
      reply({ id, answer: told(inquiry, first), ...cautionOf(inquiry), last: false });
      // What the first answer does not need is loaded after it.
      const { stages } = await import('../engine/answer/complete.ts');
      let said = performance.now();
      const alive = (): void => {
        if (performance.now() - said < ALIVE) return;
        said = performance.now();
        reply({ id, last: false });
      };
      const fuller = stages(inquiry, { onCounted: alive, onTried: alive }, first);
      for (;;) {
        await new Promise((ready) => setTimeout(ready, 0));
        if (ask !== newest) return;
        const { value, done } = fuller.next();
        if (done) break;
        reply({ id, answer: value, last: false });
      }
      reply({ id, last: true });
    } catch (error) {
      reply({ id, fault: error instanceof Error ? error.message : String(error), last: true });
    }
  };
}

/** Nothing where stops cannot be reckoned: the answer says so. */
function cautionOf(inquiry: OpenInquiry): Pick<Reply, 'caution'> {
  try {
    return { caution: inquiry.ready.caution(inquiry.context.outing.conditions.railState) };
  } catch {
    return {};
  }
}
