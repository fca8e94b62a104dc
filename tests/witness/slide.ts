/**
 * Wheels that slide, decided at the speed of the moment and for each axle group by itself; and a hand on the
 * handle that feels it.
 *
 * A wheel slides when its brake asks for more than adhesion gives, and then retards by skid friction, until
 * the brake asks for less than that. A brake that a hand graduates is eased when it has slid for a moment, and
 * put on again so that its hardest-braked wheels use a share of adhesion; all that hangs on one handle goes
 * together. What goes on by itself slides on.
 */
import type { Quantity } from '../../engine/base/quantity.ts';
import type { Hand } from './hand.ts';
import { frictionAt, risen } from './stop.ts';

export interface Easing {
  /** s from the first wheel's sliding until the driver has eased. */
  readonly noticed: number;
  /** Skid friction ÷ adhesion by speed, m/s. */
  readonly skid: { readonly speed: readonly number[]; readonly share: Float64Array };
  /** Nobody's hand: all slides on. */
  readonly alone: boolean;
}

/**
 * Share of adhesion that a hand keeps: road anti-lock gear must reach 0.75 (UN R13 annex 13, from memory), and
 * full-size wheel-slide gear "consistently outperforms drivers" (press report, 1990s): so less than 0.75; the
 * rest is common practice, no source.
 */
export const UTILISATION: Quantity = { low: 0.45, value: 0.6, high: 0.75, how: 'assumed' };

/**
 * Galton's skid series of 1878, from memory: friction 0.242 just coming to rest, 0.088 at 6.8 mph, 0.072 at
 * 13.6 mph, on rails whose adhesion was about 0.25; taken as shares of it, straight between. About 1 s until it
 * is noticed: common practice, no source.
 */
export const EASING: Easing = {
  noticed: 1,
  skid: { speed: [0, 3.04, 6.08], share: Float64Array.of(1, 0.35, 0.29) },
  alone: false,
};

export interface Sliding {
  readonly slides: Uint8Array;
  readonly asked: Float64Array;
  /** By handle: s since its wheels began to slide; whether it has been eased; share of full now. */
  readonly since: Float64Array;
  readonly easedOff: Uint8Array;
  readonly level: Float64Array;
  readonly now: Float64Array;
}

export const startEasing = ({ load, graduated, frictions }: Hand): Sliding => ({
  slides: new Uint8Array(load.length),
  asked: new Float64Array(load.length),
  since: new Float64Array(graduated.length),
  easedOff: new Uint8Array(graduated.length),
  level: new Float64Array(graduated.length).fill(1),
  now: new Float64Array(frictions.length),
});

/** Brake of this step, N; moves the state on by the step. */
export function eased(
  hand: Hand,
  easing: Easing,
  state: Sliding,
  t: number,
  step: number,
  v: number,
): number {
  const { push, wheels, material, dead, build, handle, load, adhesion, utilisation } = hand;
  const { slides, asked, easedOff, level, now } = state;
  for (let m = 0; m < now.length; m++) now[m] = frictionAt(hand.frictions[m], v);
  const wanted = (i: number): number =>
    risen(t + 0.5 * step, dead[i], build[i]) * push[i] * (material[i] < 0 ? 1 : now[material[i]]);
  asked.fill(0);
  for (let i = 0; i < push.length; i++) asked[wheels[i]] += wanted(i);
  // A handle that was eased stands where its hardest-braked wheels use the share of adhesion.
  for (let i = 0; i < push.length; i++) {
    const h = handle[i];
    if (easedOff[h] === 0) continue;
    const most = utilisation * adhesion * load[wheels[i]];
    if (asked[wheels[i]] > 0) level[h] = Math.min(level[h], most / asked[wheels[i]]);
  }
  asked.fill(0);
  for (let i = 0; i < push.length; i++) asked[wheels[i]] += level[handle[i]] * wanted(i);
  const skid = frictionAt(easing.skid, v);
  let force = 0;
  for (let w = 0; w < load.length; w++) {
    const grip = adhesion * load[w];
    const dragging = skid * grip;
    slides[w] = asked[w] > (slides[w] ? dragging : grip) ? 1 : 0;
    force += slides[w] ? dragging : asked[w];
  }
  level.fill(1);
  if (!easing.alone) feel(hand, easing, state, step);
  return force;
}

/** The hand feels sliding wheels, waits, eases: the wheels turn again. */
function feel({ wheels, handle, graduated }: Hand, { noticed }: Easing, state: Sliding, step: number): void {
  const { slides, since, easedOff } = state;
  for (let h = 0; h < graduated.length; h++) {
    if (!graduated[h] || easedOff[h] === 1) continue;
    let any = false;
    for (let i = 0; i < handle.length; i++) if (handle[i] === h && slides[wheels[i]] === 1) any = true;
    if (!any) {
      since[h] = 0;
      continue;
    }
    since[h] += step;
    if (since[h] < noticed) continue;
    easedOff[h] = 1;
    for (let i = 0; i < handle.length; i++) if (handle[i] === h) slides[wheels[i]] = 0;
  }
}
