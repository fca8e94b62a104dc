/** What stood before the last change of the papers, whatever it was, to say beside it what changed. */
import { computed, effect, signal, untracked } from '@preact/signals';
import type { Told } from '../../desk/asked.ts';
import { asked, canRedo, type Json, paper, steps, told } from './session.ts';

const mark = signal<{ readonly before: Told; readonly paper: Json } | null>(null);

/** The last answer that was told, with its counts if there was one with them. */
let last: Told | null = null;
effect(() => {
  const now = told.value;
  if (now && (now.answer.cars.length > 0 || !last)) last = now;
});

/** A change leaves most of a paper as it was; one that is opened has nothing of the last. */
const kin = (a: Json, b: Json): boolean =>
  a['name'] === b['name'] &&
  ['line', 'train', 'host', 'riders', 'conditions'].some(
    (part) => a[part] !== undefined && a[part] === b[part],
  );

/** Of steps in a row, beside the last answer that was told whole; what is typed in one field is one step. */
let seen = { paper: paper.peek(), steps: steps.peek() };
effect(() => {
  const now = { paper: paper.value, steps: steps.value };
  if (now.paper === seen.paper) return;
  const [before, sameStep] = [seen, seen.steps === now.steps];
  seen = now;
  untracked(() => {
    const was = sameStep && mark.value?.paper === before.paper ? mark.value.before : last;
    if (!kin(before.paper, now.paper) || canRedo.value) {
      last = null;
      mark.value = null;
    } else mark.value = was && { before: was, paper: now.paper };
  });
});

/** Null where nothing has changed since, or it was put back. */
export const since = computed<Told | null>(() =>
  mark.value && mark.value.paper === paper.value && mark.value.before.asked.id !== asked.value?.id
    ? mark.value.before
    : null,
);
