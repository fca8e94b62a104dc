/**
 * How one half of a parted train rolls: on, to rest, perhaps back, to where it stays or to what it meets.
 *
 *   d(v²/2)/ds = −[ B(t, v) + R(v) ]/M ∓ w′(s)
 *
 * M inertia (kg), B brakes left (N), R rolling resistance (N), w potential of grade per kg with curves taking
 * in both directions. Marched from node to node of an even grid: the grade enters by exact differences, the
 * forces by their mean over the cell; standstill is solved inside its cell. At rest it stays where brakes,
 * resistance and curves hold the grade, and rolls off again downhill where they do not. Resistance at rest is
 * the running figure: starting resistance is not relied on.
 *
 * Errors: rest within 5 cm of a plain Runge–Kutta run, except where `nearBalance` says so
 * (tests/numerics/parting). A line's last partial cell counts as beyond its end.
 */

import { brakeForce, channelFactor } from '../../motion/model.ts';
import { RAMP_STEPS } from '../../motion/stop-inputs.ts';
import { slopeIn } from '../../things/line/cubic.ts';
import { wrapCell } from './ground.ts';
import { brakes, type Motion, march } from './march.ts';
import type { Part } from './part.ts';
import { gripUnder, rowAt } from './placed.ts';
import type { Path, Roll, Traffic } from './types.ts';

export const noTraffic: Traffic = { followsAfter: 0, followsAt: 0 };

export const emptyRoll = (): Roll => ({
  outcome: 'stands',
  at: 0,
  time: 0,
  topSpeed: 0,
  endSpeed: 0,
  rollsOff: 0,
  leastAt: 0,
  mostAt: 0,
  place: -1,
  placeSpeed: 0,
  turns: 0,
  nearBalance: false,
});

/** A half may come to rest and roll off this often; it loses part of its height each time. */
const MOST_TURNS = 200;
/** Held, or not, with less than this share to spare: near balance. */
const SLIM = 0.03;

/**
 * @param node where the whole train's head was at the parting
 * @param speed m/s, ≥ 0, forward
 */
export function roll(
  part: Part,
  node: number,
  speed: number,
  traffic: Traffic,
  out: Roll,
  path?: Path,
): void {
  const start = node * part.step;
  const motion: Motion = { node, offset: 0, u: (speed * speed) / 2, time: 0, kept: false };
  if (speed > 0 && part.braked) motion.u += spotLoss(part, start, speed);
  begin(speed, start, out);
  path?.push(0, start, speed);
  let way = speed > 0 ? 1 : direction(part, motion, out);
  if (way === 0) return;
  if (speed === 0) out.turns = 1;
  if (way > 0 && part.braked && !path) brakesComeOn(part, motion, start, out);
  let first = speed > 0;
  for (;;) {
    const before = out.topSpeed;
    if (!first) out.topSpeed = out.rollsOff;
    const ended = march(part, motion, way, start, traffic, out, path);
    if (!first) {
      out.rollsOff = out.topSpeed;
      out.topSpeed = Math.max(before, out.topSpeed);
    }
    if (ended) return;
    first = false;
    // At a stand every wheel holds again.
    motion.kept = false;
    way = direction(part, motion, out);
    if (way === 0 || out.turns >= MOST_TURNS) {
      if (way !== 0) out.nearBalance = true;
      out.outcome = out.place >= 0 ? 'rolls-through-place' : out.turns === 0 ? 'stands' : 'rolls';
      return;
    }
    out.turns++;
  }
}

function begin(speed: number, start: number, out: Roll): void {
  out.outcome = 'stands';
  out.at = out.leastAt = out.mostAt = start;
  out.time = 0;
  out.topSpeed = out.endSpeed = speed;
  out.rollsOff = 0;
  out.place = -1;
  out.placeSpeed = 0;
  out.turns = 0;
  out.nearBalance = false;
}

/**
 * What the brakes of a half that rolls forward do not do on a bad spot, J/kg, given to it at once.
 *
 *   ΔF/M·min(L, v²/2 ÷ ((F − ΔF)/M))        ΔF = max(0, B − f·Σµ·N)
 *
 * B brakes at the middle of its energy (N), F with resistance and fall, L the spot (m), f adhesion there ÷ beside it: a
 * half that comes to rest on the spot loses no more than its own way. As `motion/bad-spot.ts` for a stop.
 */
function spotLoss(part: Part, s: number, v: number): number {
  const { model, a, placed, step } = part;
  const { spot, spotFactor, inertia, scratch } = model;
  if (spot <= 0) return 0;
  const middle = v * Math.SQRT1_2;
  const node = Math.round(s / step);
  const force = placed ? rowAt(placed, wrapCell(part.loop, part.cells, node), 1, false) : model.force;
  const brake = brakeForce(force, middle);
  const grip = placed ? gripUnder(placed, s) : scratch.grip[0];
  const lost = (brake - spotFactor * grip) / inertia;
  if (lost <= 0) return 0;
  const left = brake / inertia + a + slopeAt(part, s) - lost;
  return lost * (left > 0 ? Math.min(spot, (v * v) / 2 / left) : spot);
}

/**
 * The time in which the brakes come on, rolling forward, in the few steps of the build-up with their exact
 * means. Left undone, for the march to do in small steps, where it might come to rest or meet something.
 */
function brakesComeOn(part: Part, motion: Motion, start: number, out: Roll): void {
  const { model, step } = part;
  const { dt, channels, mean, lead, factor, inertia } = model;
  let s = start;
  let v = Math.sqrt(2 * motion.u);
  let top = v;
  let slowing = 0;
  for (let k = 0; k < RAMP_STEPS; k++) {
    const middle = Math.max(0, v - 0.5 * slowing);
    const pull = part.a + middle * (part.b + middle * part.c) + slopeAt(part, s + 0.25 * (v + middle) * dt);
    let effort = 0;
    let shift = 0;
    for (let i = 0; i < channels; i++) {
      const f = channelFactor(factor, i, middle);
      effort += f * mean[i * RAMP_STEPS + k];
      shift += f * lead[i * RAMP_STEPS + k];
    }
    slowing = (effort / inertia + pull) * dt;
    if (slowing > 0.7 * v) return;
    s += dt * (v - (shift / inertia + 0.5 * pull) * dt);
    v -= slowing;
    if (v > top) top = v;
  }
  const node = Math.floor(s / step);
  if (node >= part.mostNode || mayTip(part, start, node, top) || otherRail(part, start, node)) return;
  motion.node = node;
  motion.offset = s - node * step;
  motion.u = (v * v) / 2;
  // Sliding wheels are eased only after that.
  motion.time = dt * RAMP_STEPS;
  out.topSpeed = top;
  out.mostAt = s;
}

/** Is other rail than the day's under it, anywhere between its start and a node? */
function otherRail({ placed, step, loop, cells }: Part, start: number, to: number): boolean {
  if (!placed) return false;
  for (let n = Math.floor(start / step); n <= to + 1; n++) {
    if (placed.under[wrapCell(loop, cells, n)]) return true;
  }
  return false;
}

/** Could anything of it go over between its start and a node at a speed? */
function mayTip({ tip, step, loop, cells }: Part, start: number, to: number, v: number): boolean {
  if (tip.length === 0) return false;
  for (let n = Math.floor(start / step); n <= to + 1; n++) {
    if ((v * v) / 2 > tip[wrapCell(loop, cells, n)]) return true;
  }
  return false;
}

/** Pull against going forward at a place, m/s². */
function slopeAt({ ground, step, loop, cells }: Part, s: number): number {
  const node = Math.floor(s / step);
  const j = wrapCell(loop, cells, node);
  return slopeIn(ground.climb[j], ground.slopeForward[j], ground.slopeForward[j + 1], step, s - node * step);
}

/** Which way a half at rest rolls off: 1 forward, −1 backward, 0 it stays. */
function direction(part: Part, motion: Motion, out: Roll): 1 | 0 | -1 {
  const { ground, step } = part;
  const j = wrapCell(part.loop, part.cells, motion.node);
  const x = motion.offset;
  const forward = slopeIn(ground.climb[j], ground.slopeForward[j], ground.slopeForward[j + 1], step, x);
  const back = slopeIn(-ground.back[j], ground.slopeBack[j], ground.slopeBack[j + 1], step, x);
  const hold = part.a + brakes(part, motion.time, 0, motion.node, x, 1, false);
  // Curves are in both slopes, holding: forward it needs −forward, backward +back.
  const pull = Math.max(-forward, back);
  if (Math.abs(pull - hold) < SLIM * Math.max(hold, pull)) out.nearBalance = true;
  if (pull <= hold) return 0;
  return -forward > back ? 1 : -1;
}
