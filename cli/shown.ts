/** The outing with what is recorded as in date put into its paper. */
import { existsSync } from 'node:fs';
import { type Asked, asking } from '../desk/asked.ts';
import { recorded, withShown } from '../desk/due/shown.ts';
import { readOuting } from '../papers/index.ts';
import { UsageFault } from './command.ts';
import { refusal } from './open.ts';
import { clock, inStore, lookAt, STORE } from './records.ts';

/** Where records lie at hand and were not asked for, that none of them is in the answer; empty: nothing to say. */
export const unasked = (records: string | undefined): string =>
  records === undefined && existsSync(STORE)
    ? `${STORE} lies here, and nothing recorded in it is in this answer: --records ${STORE}.\n\n`
    : '';

export async function shownFrom(records: string | undefined, asked: Asked): Promise<Asked> {
  if (records === undefined) return asked;
  if (asked.trials.length > 0)
    throw new UsageFault('--records: found a file with what is tried on it; expected an outing by itself');
  return inStore({ records }, async (store) => {
    const day = asked.outing.date ?? clock.now().slice(0, 10);
    const paper = withShown(asked.paper, recorded((await lookAt(store)).entries, await store.names(), day));
    const read = await readOuting({ path: 'outing', content: JSON.stringify(paper) }, async () => undefined);
    if (!read.ok) throw refusal(read.problems);
    return asking(paper, read.value);
  });
}
