/**
 * A stop over rail in more than one state, axle by axle, in plain small steps of time, by the law that the product states
 * (docs/stopping.md).
 *
 * Each axle does what its own rail holds. A driver has one handle: of what a worse rail would take from all brakes, were
 * all of the train on it, it takes a share now; what this share was as long ago as he takes to notice, doubled and no more
 * than all, is how far he has eased towards what he would do were all of the train there.
 */
import type { Hand } from './hand.ts';
import { type Braked, brakedBy, pushesAt } from './slide.ts';
import { pullAt, risen, STEP, type Told, type Way } from './stop.ts';

/** One rail: what the hand is on it, and whether it is met at a running place. */
export interface Rail {
  readonly hand: Hand;
  readonly at: (x: number) => boolean;
}

/** @param rails the one that holds most first, the worst last; each place is on one of them */
export function stopByPlace(way: Way, rails: readonly Rail[], v0: number): Told {
  const { hand } = rails[0];
  const braked = rails.map((r) => brakedBy(r.hand));
  const { full } = braked[0];
  const told: Told = { distance: Infinity, time: 0, top: v0, full: 0, gained: 0, passed: 0 };
  const shares: number[][] = [];
  let [x, v] = [0, v0];
  const drag = (at: number, speed: number): number =>
    hand.a + speed * (hand.b + speed * hand.c) + pullAt(way, hand, at);
  for (let t = 0; t < hand.reaction; t += STEP) {
    const h = Math.min(STEP, hand.reaction - t);
    const then = v + Math.max(0, -drag(x + 0.5 * v * h, v) / hand.inertia) * h;
    x += 0.5 * (v + then) * h;
    v = then;
  }
  const wheels = axlesOf(hand);
  for (let n = 0; n * STEP < 300 && x < way.most; n++) {
    const at = x + 0.5 * v * STEP;
    const on = wheels.map((w) => w.map((behind) => railAt(rails, way.from + at - behind)));
    for (const b of braked) pushesAt(b, v);
    const t = (n + 0.5) * STEP;
    shares.push(rails.map((_, k) => shareLost(braked, on, k)));
    const then = Math.round((t - hand.notice) / STEP);
    const noticed = t - hand.notice >= full ? (shares[Math.max(0, then)] ?? []) : [];
    const brake = brakes(braked, on, noticed, t, full);
    const slower = (STEP * (brake + drag(at, v))) / hand.inertia;
    if (slower >= v) {
      told.distance = x + (slower > 0 ? (v * v * STEP) / (2 * slower) : 0);
      return told;
    }
    x += STEP * (v - 0.5 * slower);
    v -= slower;
    told.top = Math.max(told.top, v);
  }
  return told;
}

/** Places of the axles of each group behind the head, m. */
const axlesOf = ({ at, base, axles }: Hand): number[][] =>
  Array.from(at, (middle, w) =>
    Array.from({ length: axles[w] }, (_, i) =>
      axles[w] === 1 ? middle : middle - base[w] / 2 + (base[w] * i) / (axles[w] - 1),
    ),
  );

/** The best rail is all that no other one is. */
function railAt(rails: readonly Rail[], x: number): number {
  for (let k = rails.length - 1; k > 0; k--) if (rails[k].at(x)) return k;
  return 0;
}

/** What rail k takes from the brakes now, of what it would take were all of the train there. */
function shareLost(braked: readonly Braked[], on: readonly number[][], k: number): number {
  const { hand, before } = braked[0];
  let [all, here] = [0, 0];
  before.forEach((force, i) => {
    const lost = Math.max(0, force - braked[k].before[i]);
    const axles = on[hand.wheels[i]];
    all += lost;
    here += (lost * axles.filter((r) => r === k).length) / axles.length;
  });
  return all > 0 ? here / all : 0;
}

function brakes(
  braked: readonly Braked[],
  on: readonly number[][],
  noticed: readonly number[],
  t: number,
  full: number,
): number {
  const { hand } = braked[0];
  const { dead, build, wheels, notice } = hand;
  let own = 0;
  for (let i = 0; i < wheels.length; i++) {
    const axles = on[wheels[i]];
    const share = t >= full ? 1 : risen(t, dead[i], build[i]);
    for (const r of axles) {
      const { before, after } = braked[r];
      own += (share * (r === 0 && t >= full + notice ? after[i] : before[i])) / axles.length;
    }
  }
  let [left, eased] = [1, 0];
  for (let k = noticed.length - 1; k > 0; k--) {
    const p = Math.min(left, 2 * noticed[k], 1);
    // Eased by as much as there, each block as wet as its own rail leaves it.
    const { after, asks } = braked[k];
    for (let i = 0; i < wheels.length; i++) {
      const axles = on[wheels[i]];
      for (const r of axles) {
        eased += asks[i] > 0 ? (p * after[i] * braked[r].asks[i]) / asks[i] / axles.length : 0;
      }
    }
    left -= p;
  }
  return left * own + eased;
}
