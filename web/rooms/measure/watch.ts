/**
 * A stopwatch by the times of its presses, not by counting: a screen that sleeps, or a page that is opened anew, loses
 * nothing. Pure.
 */

/** A press: when the finger came down by the page's own clock, which does not jump, and by the clock of the day. */
export interface Press {
  readonly page: number;
  readonly day: number;
  /** Which page it was: the clock of another began at another time. */
  readonly of: number;
}

export interface Watch {
  readonly presses: readonly Press[];
  readonly stopped: boolean;
}

export const still: Watch = { presses: [], stopped: true };

/** The page's clock stands still while some phones sleep: then the clock of the day is believed. */
const ASLEEP = 500;

/** Between two presses, s. */
export function between(a: Press, b: Press): number {
  const [page, day] = [b.page - a.page, b.day - a.day];
  const slept = a.of !== b.of || Math.abs(page - day) > ASLEEP;
  return (slept ? day : page) / 1000;
}

/** Since the start, s, each after the first press. */
export const laps = ({ presses: [first, ...rest] }: Watch): number[] =>
  first ? rest.map((press) => between(first, press)) : [];

export const running = ({ presses, stopped }: Watch): boolean => presses.length > 0 && !stopped;

export const started = (press: Press): Watch => ({ presses: [press], stopped: false });
export const marked = (watch: Watch, press: Press): Watch => ({
  ...watch,
  presses: [...watch.presses, press],
});
export const stopped = (watch: Watch, press: Press): Watch => ({ ...marked(watch, press), stopped: true });
export const withoutLast = (watch: Watch): Watch => ({ ...watch, presses: watch.presses.slice(0, -1) });
