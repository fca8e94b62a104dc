/**
 * A parted tail with brakes that came on by themselves, over rail in more than one state, axle by axle in plain steps of time.
 *
 * Each axle does what its own rail holds. One that locks stays locked until the friction of its sliding wheels is as much as
 * its brake asks, or the tail stands.
 */
import { type Ground, meanBend, meanGrade } from './ground.ts';
import type { Rail } from './places.ts';
import { type Braked, brakedBy, pushesAt, skidding } from './slide.ts';
import { risen } from './stop.ts';
import { type Car, G } from './train.ts';

export interface Placed {
  readonly ends: 'rests' | 'off the end' | 'round';
  readonly way: number;
  readonly top: number;
}

const MOST_TURNS = 200;

/** @param rails the day's own first; each place is on one of them @param at running chainage of the whole train's head */
export function rollByPlace(
  ground: Ground,
  tail: readonly Car[],
  rails: readonly Rail[],
  from: number,
  v0: number,
  step = 0.004,
): Placed {
  const { line } = ground;
  const [{ hand }] = rails;
  const braked = rails.map((r) => brakedBy(r.hand));
  const front = tail[0].front;
  const last = tail[tail.length - 1];
  const rear = last.front + last.vehicle.length;
  const axles = Array.from(hand.at, (middle, w) =>
    Array.from({ length: hand.axles[w] }, (_, i) =>
      hand.axles[w] === 1 ? middle : middle - hand.base[w] / 2 + (hand.base[w] * i) / (hand.axles[w] - 1),
    ),
  );
  const locked = Array.from(hand.push, (_, i) => axles[hand.wheels[i]].map(() => false));
  const railAt = (x: number): number => {
    for (let k = rails.length - 1; k > 0; k--) if (rails[k].at(x)) return k;
    return 0;
  };
  const force = (x: number, of: (head: number, rear: number) => number): number =>
    tail.reduce((sum, car, i) => {
      const f = x - car.front;
      return sum + hand.mass[i] * G * of(f - car.vehicle.length, f);
    }, 0);
  const grade = (x: number): number => force(x, (a, b) => meanGrade(ground, a, b));
  const bends = (x: number): number => force(x, (a, b) => meanBend(ground, a, b)) * hand.curve;
  const brakes = (x: number, t: number, v: number): number => {
    for (const b of braked) pushesAt(b, v);
    let sum = 0;
    for (let i = 0; i < hand.push.length; i++) {
      const on = risen(t, hand.dead[i], hand.build[i]);
      const of = axles[hand.wheels[i]];
      of.forEach((behind, n) => {
        sum += axleDoes(braked[railAt(x - behind)], i, n, v, on) / of.length;
      });
    }
    return sum;
  };
  function axleDoes(b: Braked, i: number, n: number, v: number, on: number): number {
    const own = b.asks[i];
    if (own <= 0) return 0;
    const most = (b.hand.grip[hand.wheels[i]] * own) / b.asked[hand.wheels[i]];
    const slid = skidding(v, hand.skid) * most;
    const now = on * own;
    locked[i][n] = now > most || (locked[i][n] && slid < now);
    // While the brakes come on the law is that of full brake, by the share that is on.
    if (on < 1) return on * b.before[i];
    return locked[i][n] ? Math.min(slid, own) : own;
  }
  let [x, v, t, top, turns, way] = [from, v0, 0, v0, 0, 1];
  for (;;) {
    while (true) {
      const middle = x + way * 0.5 * v * step;
      const drag =
        hand.a +
        v * (hand.b + v * hand.c) +
        brakes(middle, t + 0.5 * step, v) +
        bends(middle) +
        way * grade(middle);
      const then = v - (drag / hand.inertia) * step;
      if (then <= 0) {
        if (drag > 0) x += (way * v * v * hand.inertia) / (2 * drag);
        v = 0;
        break;
      }
      x += way * 0.5 * (v + then) * step;
      t += step;
      v = then;
      if (v > top) top = v;
      if (line.loop ? Math.abs(x - from) >= line.length : x - front > line.length || x - rear < 0)
        return { ends: line.loop ? 'round' : 'off the end', way: x - from, top };
    }
    for (const of of locked) of.fill(false);
    const pull = grade(x);
    if (Math.abs(pull) <= hand.a + bends(x) + brakes(x, t, 0) || turns >= MOST_TURNS)
      return { ends: 'rests', way: x - from, top };
    way = pull > 0 ? -1 : 1;
    turns++;
  }
}
