/**
 * One direction of a rolling half, until it rests or meets something: cell by cell with whatever must be looked
 * at on the way, and over quiet stretches in one plain loop.
 */

import { brakeAt } from '../../motion/march.ts';
import { brakeForce } from '../../motion/model.ts';
import { riseIn, slopeIn } from '../../things/line/cubic.ts';
import { meets } from './events.ts';
import { wrapCell } from './ground.ts';
import type { Part } from './part.ts';
import { comingOn, locksAt, rowAt, settledAt } from './placed.ts';
import type { Path, Roll, Traffic } from './types.ts';

/** Slower than this over a summit, m/s: near balance. */
const CREEP = 0.1;
/** Longest step while brakes come on, s, and shortest, m. */
const BRAKING_STEP = 0.05;
const LEAST_STEP = 0.0005;
/** v²/2 below which a cell is passed in eighths. */
const SLOW = 0.1;

/** The moving state of one roll: written in place, so that nothing is made anew on the way. */
export interface Motion {
  /** Node behind or at the place, offset from it in m, [0, step). */
  node: number;
  offset: number;
  /** v²/2 */
  u: number;
  time: number;
  /** Wheels were locked by their rail on this way. */
  kept: boolean;
}

const resistance = ({ a, b, c }: Part, v: number): number => a + v * (b + v * c);

/** The brakes left, m/s², x m on from a node. */
export function brakes(
  part: Part,
  time: number,
  v: number,
  node: number,
  x: number,
  way: 1 | -1,
  kept: boolean,
): number {
  const { model, placed, fullAt, step } = part;
  if (!part.braked) return 0;
  if (!placed) return (time < fullAt ? brakeAt(model, time, v) : brakeForce(model.force, v)) / model.inertia;
  const j = wrapCell(part.loop, part.cells, node);
  const next = wrapCell(part.loop, part.cells, node + 1);
  if (time >= fullAt && !placed.near[j] && !placed.near[next])
    return brakeForce(kept ? placed.allKept : placed.plain, v) / model.inertia;
  if (time >= fullAt) return settledAt(placed, j, next, x / step, v, way, kept) / model.inertia;
  const under = placed.under[j] || placed.under[next];
  return (under ? comingOn(placed, time, j * step + x, v) : brakeAt(model, time, v)) / model.inertia;
}

/** One direction until rest (false) or until something ends the reckoning (true). */
export function march(
  part: Part,
  motion: Motion,
  way: 1 | -1,
  start: number,
  traffic: Traffic,
  out: Roll,
  path?: Path,
): boolean {
  const { step, ground, loop, cells } = part;
  const slope = way > 0 ? ground.slopeForward : ground.slopeBack;
  let { node, offset, u, time } = motion;
  const drag = (t: number, speed: number, cell: number, x: number): number =>
    resistance(part, speed) + brakes(part, t, speed, cell, x, way, motion.kept);
  let v = Math.sqrt(2 * u);
  let falling = false;
  for (;;) {
    if (offset === 0 && u > SLOW && !path && (!part.braked || time >= part.fullAt)) {
      motion.node = node;
      motion.u = u;
      motion.time = time;
      if (cruise(part, motion, way, start, traffic, out)) {
        ({ node, u, time } = motion);
        v = Math.sqrt(2 * u);
      }
    }
    const cell = way < 0 && offset === 0 ? node - 1 : node;
    const j = wrapCell(loop, cells, cell);
    const rise = way > 0 ? ground.climb[j] : -ground.back[j];
    const x = way < 0 && offset === 0 ? step : offset;
    const whole = way > 0 ? step - x : x;
    const length = stride(part, whole, u, v, time);
    // From node to node the rise of the cell itself; else by its cubic.
    const need =
      length === step
        ? way * rise
        : riseIn(rise, slope[j], slope[j + 1], step, x + way * length) -
          riseIn(rise, slope[j], slope[j + 1], step, x);
    const first = drag(time, v, cell, x);
    const end = x + way * length;
    const guess = u - need - length * first;
    const then = guess > 0 ? Math.sqrt(2 * guess) : 0;
    const late = time + (2 * length) / (v + then + 1e-9);
    const mean = (first + drag(late, then, cell, end)) / 2;
    const after = u - need - length * mean;
    if (!(after > 0)) {
      restIn(part, motion, way, cell, j, x, length, (first + drag(late, 0, cell, end)) / 2, u, v, time);
      note(part, motion, out);
      path?.push(out.time, out.at, 0);
      return false;
    }
    const next = then > 0 ? then + (after - guess) / then : Math.sqrt(2 * after);
    time += (2 * length) / (v + next);
    if (falling && after > u && u < (CREEP * CREEP) / 2) out.nearBalance = true;
    falling = after < u;
    u = after;
    v = next;
    if (v > out.topSpeed) out.topSpeed = v;
    if (length < whole) {
      node = cell;
      offset = x + way * length;
      path?.push(time, cell * step + offset, way * v);
      continue;
    }
    node = way > 0 ? cell + 1 : cell;
    offset = 0;
    if (part.placed && locksAt(part.placed, wrapCell(loop, cells, node), time, v)) motion.kept = true;
    const at = node * step;
    if (at < out.leastAt) out.leastAt = at;
    if (at > out.mostAt) out.mostAt = at;
    path?.push(time, at, way * v);
    if (meets(part, way, node, u, v, time, start, traffic, out)) {
      out.at = at;
      out.time = time;
      out.endSpeed = v;
      return true;
    }
  }
}

/**
 * The same march over whole cells where nothing can happen: as far as the cell before the one in which it
 * comes near rest or something must be looked at. All in one loop on plain numbers: most of the work is here.
 * @returns whether it went on
 */
function cruise(
  part: Part,
  motion: Motion,
  way: 1 | -1,
  start: number,
  traffic: Traffic,
  out: Roll,
): boolean {
  const { step, loop, cells, a, b, c, tip, placeAtRear, placed } = part;
  const rise = way > 0 ? part.ground.climb : part.ground.back;
  let { force } = part.model;
  const share = part.braked ? 1 / part.model.inertia : 0;
  const mayTip = tip.length > 0;
  const watchPlaces = way < 0 && out.place < 0;
  const followed = way < 0 && traffic.followsAt > 0;
  const last = lastQuietNode(part, motion.node, way, start);
  let { node, u, time } = motion;
  const first = node;
  let v = Math.sqrt(2 * u);
  let top = out.topSpeed;
  let at = wrapCell(loop, cells, node);
  if (placed) force = rowAt(placed, at, way, motion.kept);
  let drag = dragFull(a, b, c, force, share, v);
  while (node !== last) {
    const before = way > 0 ? at : at === 0 && loop ? cells - 1 : at - 1;
    const next = way > 0 ? (at + 1 === cells && loop ? 0 : at + 1) : before;
    const need = rise[before];
    const guess = u - need - step * drag;
    if (!(guess > SLOW)) break;
    const then = Math.sqrt(2 * guess);
    if (placed) {
      if (locksAt(placed, next, time, then)) motion.kept = true;
      force = rowAt(placed, next, way, motion.kept);
    }
    const late = dragFull(a, b, c, force, share, then);
    const after = u - need - 0.5 * step * (drag + late);
    if (!(after > SLOW) || (mayTip && after > tip[next]) || (watchPlaces && placeAtRear[next] >= 0)) break;
    const speed = then + (after - guess) / then;
    const later = time + (2 * step) / (v + speed);
    if (followed) {
      const rear = (node - 1) * step - part.rear;
      if (rear <= start + traffic.followsAt * (later - traffic.followsAfter)) break;
    }
    drag = late;
    u = after;
    v = speed;
    time = later;
    node += way;
    at = next;
    if (v > top) top = v;
  }
  if (node === first) return false;
  motion.node = node;
  motion.u = u;
  motion.time = time;
  out.topSpeed = top;
  out.leastAt = Math.min(out.leastAt, node * step);
  out.mostAt = Math.max(out.mostAt, node * step);
  return true;
}

/** The node before the one at which the end of the line or a whole lap must be looked at. */
function lastQuietNode(part: Part, node: number, way: 1 | -1, start: number): number {
  const { loop, cells, step, mostNode, leastNode } = part;
  const from = Math.round(start / step);
  if (way < 0) return Math.min(node, loop ? from - cells + 1 : leastNode + 1);
  return Math.max(node, (loop ? from + cells : mostNode) - 1);
}

/** Full brakes and resistance, m/s². */
function dragFull(a: number, b: number, c: number, force: Float64Array, share: number, v: number): number {
  return a + v * (b + v * c) + (share > 0 ? share * brakeForce(force, v) : 0);
}

/** A whole cell at a time; shorter while brakes come on, and where it creeps, for the sake of the time. */
function stride(part: Part, whole: number, u: number, v: number, time: number): number {
  if (part.braked && time < part.fullAt) {
    const short = v * BRAKING_STEP;
    return short < LEAST_STEP ? Math.min(LEAST_STEP, whole) : Math.min(short, whole);
  }
  if (u > SLOW || whole < part.step / 8) return whole;
  return part.step / 8;
}

/** Where it comes to rest inside a cell; into `motion`. */
function restIn(
  part: Part,
  motion: Motion,
  way: 1 | -1,
  cell: number,
  j: number,
  x: number,
  length: number,
  mean: number,
  u: number,
  v: number,
  time: number,
): void {
  const { step, ground } = part;
  const slope = way > 0 ? ground.slopeForward : ground.slopeBack;
  const rise = way > 0 ? ground.climb[j] : -ground.back[j];
  const from = riseIn(rise, slope[j], slope[j + 1], step, x);
  let low = 0;
  let high = length;
  let d = u > 0 ? Math.min(length, (u * length) / (u + mean * length)) : length / 2;
  for (let n = 0; n < 60 && high - low > 1e-7; n++) {
    const here = x + way * d;
    const left = u - (riseIn(rise, slope[j], slope[j + 1], step, here) - from) - mean * d;
    if (left > 0) low = d;
    else high = d;
    const steep = way * slopeIn(rise, slope[j], slope[j + 1], step, here) + mean;
    const newton = d + left / steep;
    if (Math.abs(newton - d) < 1e-8) {
      low = d;
      break;
    }
    d = newton > low && newton < high ? newton : (low + high) / 2;
  }
  const at = x + way * low;
  motion.node = at >= step ? cell + 1 : cell;
  motion.offset = at >= step ? 0 : at;
  motion.u = 0;
  motion.time = time + (v > 0 ? (2 * low) / v : 0);
}

/** Put the place of rest into the result. */
function note(part: Part, motion: Motion, out: Roll): void {
  out.at = motion.node * part.step + motion.offset;
  out.time = motion.time;
  out.endSpeed = 0;
  if (out.at < out.leastAt) out.leastAt = out.at;
  if (out.at > out.mostAt) out.mostAt = out.at;
}
