/** Where the train stands on the strip, how fast, and through which window the line is seen. */
import { computed, signal } from '@preact/signals';
import type { StopsAtHand } from '../../../desk/stops-at-hand.ts';
import { stillHead } from '../../../views/strip/still.ts';
import { staysHere } from '../../../words/verdict.ts';
import { asked, caution, timed, told } from '../../state/session.ts';

/** The outing on the screen; none while its paper is read, or cannot be. */
const shown = computed(() => asked.value?.outing ?? null);

export const head = signal<number | null>(null);
export const speed = signal<number | null>(null);
export const seen = signal<{ readonly from: number; readonly to: number } | null>(null);

/** What stops the train at hand. The answer comes without it, so it is loaded once there is one. */
const hands = signal<typeof import('../../../desk/stops-at-hand.ts') | null>(null);
export async function loadAtHand(): Promise<void> {
  hands.value ??= await import('../../../desk/stops-at-hand.ts');
}

export const live = computed<StopsAtHand | null>(() =>
  timed.value && hands.value ? hands.value.openStopsAtHand(timed.value) : null,
);

export const length = computed(() => shown.value?.line.length ?? 1);
export const view = computed(() => seen.value ?? { from: 0, to: length.value });

export const headNow = computed(() => {
  if (!shown.value) return 0;
  const at = head.value ?? stillHead(shown.value, live.value?.trainLength ?? 0);
  return Math.min(length.value, Math.max(0, at));
});

/** m/s: chosen, else planned, else the host's limit, else walking pace. */
export const speedNow = computed(
  () => speed.value ?? shown.value?.plannedSpeed ?? shown.value?.host.speed?.value ?? 1.5,
);

/** What the train needs from there, and no gap of one that may not leave; null until it is known how careful to be, which comes with the answer. */
export const reachNow = computed(() => {
  const [hand, careful] = [live.value, caution.value];
  if (!hand || !careful) return null;
  const { likely, cautious, gap } = hand.stop(headNow.value, speedNow.value, careful);
  const stays = told.value && staysHere(told.value.answer.verdict);
  return { likely: likely.distance, cautious: cautious.distance, ...(stays === undefined ? { gap } : {}) };
});

/** Move the head along the line; a loop goes round. */
export function moveTo(at: number): void {
  const L = length.value;
  head.value = shown.value?.line.loop ? ((at % L) + L) % L : Math.min(L, Math.max(0, at));
}

export function zoom(factor: number, about = headNow.value): void {
  const { from, to } = view.value;
  const wide = Math.min(length.value, Math.max(4, (to - from) * factor));
  const start = Math.min(Math.max(0, about - ((about - from) / (to - from)) * wide), length.value - wide);
  seen.value = wide >= length.value ? null : { from: start, to: start + wide };
}

/** Bring a stretch into the window with room around it, and the train to its start. */
export function focusOn(from: number, to: number): void {
  const room = Math.max(20, (to - from) * 0.6);
  const start = Math.max(0, from - room);
  seen.value = { from: start, to: Math.min(length.value, to + room) };
  moveTo(from);
  document.querySelector('.strip')?.scrollIntoView({ block: 'center' });
}
