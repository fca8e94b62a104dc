/**
 * Wheels that slide, by the law that the product states (docs/stopping.md), reckoned here at the speed of the moment
 * and for each axle group by itself.
 *
 * Adhesion along one rail varies by ±δ of its mean: of the way of wheels whose brake asks for r times their grip they
 * slide on p = (r − 1 + δ)/2δ, held in 0 … 1. Until the driver has noticed they do grip·[(1 − p)·min(r, 1) +
 * p·min(r, skid(v))]: sliding holds no more than the brake asks.
 * Then the handle is eased: its hardest braked wheels set p, and on that share of the way all that hangs on it does
 * utilisation ÷ r of what it did; on the rest what the rail holds. What came on by itself is eased by nobody: it locks
 * where it asks for more than its grip, and keeps grip·skid(v).
 */
import type { Hand } from './hand.ts';
import { frictionAt, risen } from './stop.ts';

/** δ, as stated. */
const VARIES = 0.25;
/** m/s between the speeds at which the forces of one hand are remembered, and how many. */
const NODE = 0.05;
const NODES = 600;

export const slidingWay = (ratio: number): number =>
  Math.min(1, Math.max(0, (ratio - 1 + VARIES) / (2 * VARIES)));

/** Friction of a skidding wheel ÷ adhesion. */
export const skidding = (v: number, { floor, fall }: Hand['skid']): number =>
  floor + (1 - floor) * Math.exp(-v / fall);

/** The brakes of one hand: N of each push at the speed last asked for, and what is remembered by speed. */
export interface Braked {
  readonly hand: Hand;
  /** s from the driver's act until all brakes are on, and until he has eased. */
  readonly full: number;
  readonly noticed: number;
  readonly before: Float64Array;
  readonly after: Float64Array;
  readonly sums: { readonly before: Float64Array; readonly after: Float64Array };
  readonly asked: Float64Array;
  readonly ratio: Float64Array;
  readonly now: Float64Array;
  /** What each push asks of the rail at that speed, N. */
  readonly asks: Float64Array;
}

export function brakedBy(hand: Hand): Braked {
  const { dead, build, push, grip, alone, frictions, notice } = hand;
  const full = dead.reduce((t, d, i) => Math.max(t, d + build[i]), 0);
  return {
    hand,
    full,
    noticed: full + notice,
    before: new Float64Array(push.length),
    after: new Float64Array(push.length),
    sums: { before: new Float64Array(NODES).fill(NaN), after: new Float64Array(NODES).fill(NaN) },
    asked: new Float64Array(grip.length),
    ratio: new Float64Array(alone.length),
    now: new Float64Array(frictions.length),
    asks: new Float64Array(push.length),
  };
}

/** What each push does at a speed when it is full on, N. */
export function pushesAt({ hand, before, after, asked, ratio, now, asks }: Braked, v: number): void {
  const { push, wheels, material, handle, alone, grip, utilisation } = hand;
  const skid = skidding(v, hand.skid);
  for (let m = 0; m < now.length; m++) now[m] = frictionAt(hand.frictions[m], v);
  asked.fill(0);
  ratio.fill(0);
  const full = (i: number): number => push[i] * (material[i] < 0 ? 1 : now[material[i]]);
  for (let i = 0; i < push.length; i++) asked[wheels[i]] += full(i);
  for (let i = 0; i < push.length; i++) {
    const [w, h] = [wheels[i], handle[i]];
    if (grip[w] > 0) ratio[h] = Math.max(ratio[h], asked[w] / grip[w]);
  }
  for (let i = 0; i < push.length; i++) {
    const [w, h, own] = [wheels[i], handle[i], full(i)];
    asks[i] = own;
    // Two brakes on the same wheels share their grip by what each asks for.
    const most = own > 0 ? (grip[w] * own) / asked[w] : 0;
    if (alone[h]) {
      before[i] = own > most ? Math.min(skid * most, own) : own;
      after[i] = before[i];
      continue;
    }
    const held = Math.min(own, most);
    const slips = own > 0 ? slidingWay(own / most) : 0;
    before[i] = (1 - slips) * held + slips * Math.min(own, skid * most);
    const eases = slidingWay(ratio[h]);
    after[i] = eases > 0 ? (1 - eases) * held + (eases * utilisation * own) / ratio[h] : held;
  }
}

/** Brake of the whole train, N. @param t s since the driver's act */
export function brakeAt(braked: Braked, t: number, v: number): number {
  const { full, noticed, sums, hand } = braked;
  if (t >= full) return remembered(braked, t >= noticed ? sums.after : sums.before, v);
  pushesAt(braked, v);
  const { dead, build } = hand;
  return braked.before.reduce((sum, force, i) => sum + risen(t, dead[i], build[i]) * force, 0);
}

function remembered(braked: Braked, sums: Float64Array, v: number): number {
  const r = Math.min(v / NODE, NODES - 2);
  const k = r | 0;
  for (let n = k; n <= k + 1; n++) {
    if (!Number.isNaN(sums[n])) continue;
    pushesAt(braked, n * NODE);
    const add = (a: number, b: number): number => a + b;
    braked.sums.before[n] = braked.before.reduce(add, 0);
    braked.sums.after[n] = braked.after.reduce(add, 0);
  }
  return sums[k] + (r - k) * (sums[k + 1] - sums[k]);
}
