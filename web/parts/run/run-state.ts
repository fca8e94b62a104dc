/** The run being played: where it is on its clock, and what moves it on. */
import { computed, effect, signal } from '@preact/signals';
import { drivenOf } from '../../../desk/driven.ts';
import { type Frame, frameAt, nextTime, trainRun } from '../../../desk/run.ts';
import { stillHead } from '../../../views/strip/still.ts';
import { head, live, speed } from '../../rooms/answer/strip-state.ts';
import { speech, told } from '../../state/session.ts';

/** s on the clock of the run; null: the train is moved by hand. */
export const clock = signal<number | null>(null);
export const playing = signal(false);
/** Seconds of the run in a second. */
export const pace = signal(4);

export const run = computed(() => {
  const driven = told.value && drivenOf(told.value.answer, { system: speech.value.system });
  if (!told.value || !driven) return null;
  const { outing } = told.value.asked;
  const { line } = outing;
  const stop = driven.acts.find((act) => act.kind === 'stop');
  const still = stillHead(outing, live.value?.trainLength ?? 0);
  return trainRun(outing, driven, line.loop && stop ? stop.target : still);
});

export const frame = computed<Frame | null>(() =>
  run.value && clock.value !== null ? frameAt(run.value, clock.value) : null,
);

export function seek(time: number): void {
  const now = run.value;
  if (!now) return;
  clock.value = Math.min(now.lasts, Math.max(0, time));
  const { at, speed: v } = frameAt(now, clock.value);
  head.value = at;
  speed.value = v;
  if (clock.value >= now.lasts) playing.value = false;
}

/** To the next thing to do. */
export function next(): void {
  if (run.value) seek(nextTime(run.value, clock.value ?? 0));
}

export function play(): void {
  if (!run.value) return;
  if (playing.value) {
    playing.value = false;
    return;
  }
  if (clock.value === null || clock.value >= run.value.lasts) seek(0);
  playing.value = true;
}

/** Whoever does not want things to move sees it in steps, a second apart. */
const still = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

effect(() => {
  if (!playing.value) return;
  let last = performance.now();
  const on = (): void => {
    const now = performance.now();
    seek((clock.peek() ?? 0) + ((now - last) / 1000) * pace.peek());
    last = now;
  };
  if (still()) {
    const timer = setInterval(on, 1000);
    return () => clearInterval(timer);
  }
  let asked = requestAnimationFrame(function step() {
    on();
    asked = requestAnimationFrame(step);
  });
  return () => cancelAnimationFrame(asked);
});

/** The same answer comes in parts: its counts and remedies are no other run. */
const outing = computed(() => told.value?.asked.id);
effect(() => {
  void outing.value;
  playing.value = false;
  clock.value = null;
});

// Who takes the train in hand stops the run.
effect(() => {
  const at = head.value;
  const run = frame.peek();
  if (!run || at === run.at) return;
  playing.value = false;
  clock.value = null;
});
