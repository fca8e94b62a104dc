/** What is recorded, put into the outing on the screen: what stands, and what is not mended. */
import { computed } from '@preact/signals';
import { recorded, withShown } from '../../desk/due/shown.ts';
import { clock, kept } from './records.ts';
import { change, type Json, outing, paper } from './session.ts';

const day = computed(() => outing.value?.date ?? clock.now().slice(0, 10));
/** Made once, not with every letter that somebody writes. */
const now = computed(() => kept.value && recorded(kept.value.entries, kept.value.names, day.value));
const asRecorded = computed(() => (now.value ? (withShown(paper.value, now.value) as Json) : paper.value));

/** Something is recorded here that does not stand in the outing. */
export const unshown = computed(() => asRecorded.value !== paper.value);

/** Whether anything in the outing is otherwise now. */
export function showToHost(): boolean {
  const differs = unshown.value;
  if (differs) change(asRecorded.value);
  return differs;
}
