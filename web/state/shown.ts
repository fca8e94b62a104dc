/** What is recorded, put into the outing on the screen: what stands, and what is not mended. */
import { withShown } from '../../desk/due/shown.ts';
import { clock, type Kept } from './records.ts';
import { change, type Json, outing, paper } from './session.ts';

/** Whether anything in the outing is otherwise now. */
export function showToHost(now: Kept): boolean {
  const day = outing.value?.date ?? clock.now().slice(0, 10);
  const next = withShown(paper.value, now.entries, now.names, day) as Json;
  const differs = next !== paper.value;
  if (differs) change(next);
  return differs;
}
