/** Looks for the ladder beside the page and the check: each one that is found is better than the last. */
import { inquire } from '../engine/answer/inquiry.ts';
import { type Ladder, ladders } from '../engine/answer/ladder.ts';
import type { Outing } from '../engine/outing/types.ts';

export interface LadderReply {
  readonly ladder?: Ladder;
  readonly last: boolean;
}

const reply = (message: LadderReply): void => postMessage(message);

addEventListener('message', ({ data }: MessageEvent<Outing>) => {
  for (const ladder of ladders(inquire(data))) reply({ ladder, last: false });
  reply({ last: true });
});
