/** What stood before the last change of the day or of a seat, to say beside it what changed. */
import { computed, signal } from '@preact/signals';
import type { Told } from '../../desk/asked.ts';
import { asked, change, type Json, paper, told } from './session.ts';

const mark = signal<{ readonly before: Told; readonly paper: Json } | null>(null);

/** A step that is told beside what was: of steps in a row, beside the last answer that was told with its counts. */
export function changeTold(next: Json): void {
  if (next === paper.value) return;
  const now = told.value;
  const before = now && now.answer.cars.length > 0 ? now : (mark.value?.before ?? now);
  change(next);
  mark.value = before ? { before, paper: next } : null;
}

/** Null where the paper has changed otherwise since, or stands as it did. */
export const since = computed<Told | null>(() =>
  mark.value && mark.value.paper === paper.value && mark.value.before.asked.id !== asked.value?.id
    ? mark.value.before
    : null,
);
