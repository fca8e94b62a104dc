/** Time of the parting that is shown, s since it parted, and its running. */
import { signal } from '@preact/signals';

export const now = signal(0);
export const running = signal(false);
/** Times as fast as it happens. */
export const pace = signal(1);

let last = 0;

/** Run from here, or from the start when it has ended. @param end s */
export function start(end: number): void {
  if (now.value >= end) now.value = 0;
  running.value = true;
  last = performance.now();
  requestAnimationFrame((at) => tick(at, end));
}

export function stop(): void {
  running.value = false;
}

function tick(at: number, end: number): void {
  if (!running.value) return;
  now.value = Math.min(end, now.value + (Math.max(0, at - last) / 1000) * pace.value);
  last = at;
  if (now.value >= end) running.value = false;
  else requestAnimationFrame((next) => tick(next, end));
}
