/**
 * Carrying a thing with mouse, finger or pen. Nothing is carried until the pointer has moved a little, so that
 * a tap stays a tap; Escape puts it back.
 */
import { signal } from '@preact/signals';

export interface Carried {
  readonly label: string;
  readonly x: number;
  readonly y: number;
}

export interface Errand {
  readonly label: string;
  /** The pointer is here now. */
  readonly over: (x: number, y: number) => void;
  /** Let go here. */
  readonly drop: (x: number, y: number) => void;
  /** After a drop, and also when put back. */
  readonly done: () => void;
}

/** What is being carried now, for the page to show. */
export const carried = signal<Carried | null>(null);

/** px before a press becomes a carry. */
const SLACK = 7;
/** px from the edge of the window where the page begins to move along. */
const EDGE = 56;

/** What of the screen the word above and the doors below leave. */
function inSight(): { readonly top: number; readonly bottom: number } {
  const head = document.querySelector('.head')?.getBoundingClientRect().bottom ?? 0;
  const doors = document.querySelector('.doors')?.getBoundingClientRect().top ?? 0;
  return { top: Math.max(0, head), bottom: doors > innerHeight / 2 ? doors : innerHeight };
}

export function grab(event: PointerEvent, errand: Errand): void {
  if (event.button !== 0 || !event.isPrimary) return;
  const { pointerId, clientX, clientY } = event;
  let carrying = false;
  const end = (): void => {
    for (const [name, listen] of listeners) removeEventListener(name, listen as EventListener);
    carried.value = null;
    if (carrying) errand.done();
  };
  const move = (e: PointerEvent): void => {
    if (e.pointerId !== pointerId) return;
    if (!carrying && Math.hypot(e.clientX - clientX, e.clientY - clientY) < SLACK) return;
    carrying = true;
    e.preventDefault();
    carried.value = { label: errand.label, x: e.clientX, y: e.clientY };
    const { top, bottom } = inSight();
    if (e.clientY < top + EDGE) scrollBy(0, -14);
    else if (e.clientY > bottom - EDGE) scrollBy(0, 14);
    errand.over(e.clientX, e.clientY);
  };
  const up = (e: PointerEvent): void => {
    if (e.pointerId !== pointerId) return;
    if (carrying) {
      swallowClick(e.clientX, e.clientY);
      errand.drop(e.clientX, e.clientY);
    }
    end();
  };
  const key = (e: KeyboardEvent): void => {
    if (e.key === 'Escape') end();
  };
  const listeners = [
    ['pointermove', move],
    ['pointerup', up],
    ['pointercancel', end],
    ['keydown', key],
  ] as const;
  for (const [name, listen] of listeners) addEventListener(name, listen as EventListener);
}

/** The click that follows a carry, where it was let go, is not a tap. */
function swallowClick(x: number, y: number): void {
  const swallow = (e: MouseEvent): void => {
    if (Math.hypot(e.clientX - x, e.clientY - y) > 1) return;
    e.stopPropagation();
    e.preventDefault();
  };
  addEventListener('click', swallow, { capture: true });
  setTimeout(() => removeEventListener('click', swallow, { capture: true }), 50);
}

/** The nearest element around a point that carries a data attribute, and what it says. */
export function under(x: number, y: number, attribute: string): string | undefined {
  const found = document.elementFromPoint(x, y)?.closest(`[data-${attribute}]`);
  return found?.getAttribute(`data-${attribute}`) ?? undefined;
}
