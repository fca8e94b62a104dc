/** The whole check off the page's thread: the answer at once, then the same with remedies. */
import { checkOuting } from '../desk/check.ts';
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
  readonly fault?: string;
  readonly last: boolean;
}

const reply = (message: Reply): void => postMessage(message);
let newest = 0;

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  newest = data.id;
  const { id } = data;
  const outing = data.changes.reduce(applyChange, data.outing);
  try {
    reply({ id, answer: checkOuting(outing, { remedies: false }), last: false });
  } catch (error) {
    reply({ id, fault: error instanceof Error ? error.message : String(error), last: true });
    return;
  }
  // A newer question may be waiting: let it in before the search for remedies.
  setTimeout(() => {
    if (id === newest) reply({ id, answer: checkOuting(outing), last: true });
  }, 0);
});
