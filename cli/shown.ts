/** The outing with what is recorded as in date put into its paper. */
import { type Asked, asking } from '../desk/asked.ts';
import { recorded, withShown } from '../desk/due/shown.ts';
import { readOuting } from '../papers/index.ts';
import { UsageFault } from './command.ts';
import { refusal } from './open.ts';
import { clock, inStore, lookAt } from './records.ts';

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
