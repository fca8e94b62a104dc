/** What is recorded, put into the outing on the screen: what stands, and what is not mended. */
import { withShown } from '../../desk/due/shown.ts';
import { clock, type Kept } from './records.ts';
import { change, type Json, outing, paper } from './session.ts';

const asRecorded = (now: Kept): Json => {
  const day = outing.value?.date ?? clock.now().slice(0, 10);
  return withShown(paper.value, now.entries, now.names, day) as Json;
};

/** Whether all that is recorded stands in the outing. */
export const standsInOuting = (now: Kept): boolean => asRecorded(now) === paper.value;

/** Whether anything in the outing is otherwise now. */
export function showToHost(now: Kept): boolean {
  const next = asRecorded(now);
  const differs = next !== paper.value;
  if (differs) change(next);
  return differs;
}
