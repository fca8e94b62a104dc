/**
 * A parted tail followed in plain small steps: on, to rest, and where what is left on it does not hold the
 * grade, off again downhill, until it stays or leaves the line or has gone a whole lap.
 */

import type { Quantity } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { type Ground, meanBend, meanGrade } from './ground.ts';
import { type Hand, type Table, tableOf } from './hand.ts';
import { brakeAt, brakedBy } from './slide.ts';
import { type Brake, type Car, G, leftOnTail } from './train.ts';

export interface Rolled {
  /** How it ends: at rest, off the line's end, or round a loop. */
  readonly ends: 'rests' | 'off the end' | 'round';
  /** m that the train's head would have gone on (back negative). */
  readonly way: number;
  readonly top: number;
  readonly time: number;
  /** Times that it rolled off again. */
  readonly turns: number;
  /** Least share by which it was held, or was not, at any rest: (pull − hold) ÷ the greater. */
  readonly nearest: number;
}

const MOST_TURNS = 200;

/** @param hand of the tail's own vehicles @param tail its vehicles, with their places behind the train's head */
export function rollTail(
  ground: Ground,
  tail: readonly Car[],
  hand: Hand,
  from: number,
  v0: number,
  step = 0.004,
): Rolled {
  const { line } = ground;
  const front = tail[0].front;
  const last = tail[tail.length - 1];
  const rear = last.front + last.vehicle.length;
  const { mass, inertia, a, b, c, curve } = hand;
  const grade = (x: number): number => {
    let force = 0;
    for (let i = 0; i < tail.length; i++) {
      const f = x - tail[i].front;
      force += mass[i] * meanGrade(ground, f - tail[i].vehicle.length, f);
    }
    return force * G;
  };
  const bends = (x: number): number => {
    let force = 0;
    for (let i = 0; i < tail.length; i++) {
      const f = x - tail[i].front;
      force += mass[i] * meanBend(ground, f - tail[i].vehicle.length, f);
    }
    return force * G * curve;
  };
  const braked = brakedBy(hand);
  let [x, v, t, top, turns, nearest] = [from, v0, 0, v0, 0, 1];
  let way = 1;
  for (;;) {
    for (;;) {
      const middle = x + way * 0.5 * v * step;
      const drag =
        a + v * (b + v * c) + brakeAt(braked, t + 0.5 * step, v) + bends(middle) + way * grade(middle);
      const then = v - (drag / inertia) * step;
      if (then <= 0) {
        if (drag > 0) {
          x += (way * v * v * inertia) / (2 * drag);
          t += (v * inertia) / drag;
        }
        v = 0;
        break;
      }
      x += way * 0.5 * (v + then) * step;
      t += step;
      v = then;
      if (v > top) top = v;
      const end = endOf(x);
      if (end) return { ends: end, way: x - from, top, time: t, turns, nearest };
    }
    const pull = grade(x);
    const hold = a + bends(x) + brakeAt(braked, t, 0);
    nearest = Math.min(nearest, Math.abs(Math.abs(pull) - hold) / Math.max(Math.abs(pull), hold));
    if (Math.abs(pull) <= hold || turns >= MOST_TURNS) {
      return { ends: 'rests', way: x - from, top, time: t, turns, nearest };
    }
    way = pull > 0 ? -1 : 1;
    turns++;
  }
  function endOf(at: number): Rolled['ends'] | undefined {
    if (line.loop) return Math.abs(at - from) >= line.length ? 'round' : undefined;
    return at - front > line.length || at - rear < 0 ? 'off the end' : undefined;
  }
}

/** What the tail behind vehicle `first − 1` is dealt from: its own vehicles and the brakes left on it. */
export function tailTable(outing: Outing, first: number): Table {
  const { conditions, assumed } = outing;
  const whole = tableOf(outing, []);
  const brakes = leftOnTail(outing, first).map(({ car, gear, acts }): Brake => {
    const dead = gear.deadTime ?? assumed.deadTime[gear.kind];
    const deadTime = acts ? later(dead, conditions.reaction) : dead;
    return { car: car - first, gear: { ...gear, deadTime }, alone: !acts };
  });
  return { ...whole, cars: whole.cars.slice(first), brakes };
}

/** Whoever must act takes his time first. */
const later = (dead: Quantity, by: Quantity): Quantity => ({
  ...dead,
  low: dead.low + by.low,
  value: dead.value + by.value,
  high: dead.high + by.high,
});
