/**
 * A roll with neither power nor brake past marks, vehicle by vehicle, in plain small steps of time: what a person with a
 * stopwatch beside the line would write down.
 */
import type { Hand } from './hand.ts';
import { pullAt, STEP, type Way } from './stop.ts';

export interface Passed {
  /** s and m/s at each mark; NaN: not reached. */
  readonly time: number[];
  readonly speed: number[];
  /** m and s from the start; Infinity: it rolled on. */
  readonly rest: number;
  readonly restTime: number;
}

/** @param marks m from the start, growing */
export function rollPast(
  way: Way,
  { inertia, a, b, c, ...hand }: Hand,
  v0: number,
  marks: readonly number[],
  step = STEP,
): Passed {
  way.pulled = 0;
  const drag = (x: number, v: number): number =>
    (a + v * (b + v * c) + pullAt(way, { inertia, a, b, c, ...hand }, x)) / inertia;
  const told: Passed = {
    time: marks.map(() => NaN),
    speed: marks.map(() => NaN),
    rest: Infinity,
    restTime: Infinity,
  };
  let [x, v, t, next] = [0, v0, 0, 0];
  for (;;) {
    const first = drag(x, v);
    const slow = drag(x + 0.5 * v * step, Math.max(0, v - 0.5 * first * step));
    const then = v - slow * step;
    if (then <= 0 && t > 0) {
      const left = slow > 0 ? (v * v) / (2 * slow) : 0;
      return { ...told, rest: x + left, restTime: t + (slow > 0 ? v / slow : 0) };
    }
    const on = x + 0.5 * (v + then) * step;
    for (; next < marks.length && marks[next] <= on; next++) {
      const share = (marks[next] - x) / (on - x);
      told.time[next] = t + share * step;
      told.speed[next] = v + share * (then - v);
    }
    [x, v, t] = [on, then, t + step];
    if (x > way.most || t > 900) return told;
  }
}
