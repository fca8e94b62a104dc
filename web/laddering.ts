/** Looks for the ladder beside the page: each one that is found is better than the last. */
import { inquire } from '../engine/answer/inquiry.ts';
import { type Ladder, ladders } from '../engine/answer/ladder.ts';
import type { Outing } from '../engine/outing/types.ts';

/** Asked of a worker of its own, which is let go when the outing changes. */
export interface LadderAsk {
  readonly ladder: Outing;
}

export interface LadderReply {
  readonly ladder?: Ladder;
  readonly last: boolean;
}

export function look({ ladder: outing }: LadderAsk, reply: (message: LadderReply) => void): void {
  for (const ladder of ladders(inquire(outing))) reply({ ladder, last: false });
  reply({ last: true });
}
