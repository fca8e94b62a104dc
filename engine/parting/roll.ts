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
import { RAMP_STEPS, SPEED_NODES, SPEED_STEP } from '../stopping/kit.ts';
import { brakeAt } from '../stopping/march.ts';
import { brakeForce, channelFactor } from '../stopping/model.ts';
import type { Part } from './part.ts';
import type { Roll } from './types.ts';

/** What else is on the line. */
export interface Traffic {
  /** Following train: s behind, and its speed, m/s; speed 0: none. */
  followsAfter: number;
  followsAt: number;
}

export const noTraffic: Traffic = { followsAfter: 0, followsAt: 0 };

export const emptyRoll = (): Roll => ({
  outcome: 'stands',
  at: 0,
  time: 0,
  topSpeed: 0,
  endSpeed: 0,
  leastAt: 0,
  mostAt: 0,
  place: -1,
  placeSpeed: 0,
  turns: 0,
  nearBalance: false,
});

/** Samples of a roll, three numbers each: time s, place m (unwrapped), speed m/s (negative: backward). */
export type Path = number[];

/** A half may come to rest and roll off this often; it loses part of its height each time. */
const MOST_TURNS = 200;
/** Slower than this over a summit, m/s, or held with less than this to spare: near balance. */
const CREEP = 0.1;
const SLIM = 0.03;
/** Slower than this against the running direction a place is not run through, m/s. */
const WALKING = 0.1;

/** Longest step while brakes come on, s, and shortest, m. */
const BRAKING_STEP = 0.05;
const LEAST_STEP = 0.0005;
/** v²/2 below which a cell is passed in eighths. */
const SLOW = 0.1;

/** The moving state: kept in one object so that nothing is allocated while it rolls. */
interface Motion {
  /** Node behind or at the place, offset from it in m, [0, step). */
  node: number;
  offset: number;
  /** v²/2 */
  u: number;
  time: number;
}

const motion: Motion = { node: 0, offset: 0, u: 0, time: 0 };

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
  begin(node, speed, start, out);
  path?.push(0, start, speed);
  const off = speed > 0 ? 1 : direction(part, 0, out);
  if (off === 0) return;
  if (speed === 0) out.turns = 1;
  let ahead = off > 0;
  if (ahead && part.braked && !path) brakesComeOn(part, start, out);
  for (;;) {
    const done = ahead
      ? march(part, 1, start, traffic, out, path)
      : march(part, -1, start, traffic, out, path);
    if (done) return;
    const way = direction(part, motion.time, out);
    if (way === 0 || out.turns >= MOST_TURNS) {
      if (way !== 0) out.nearBalance = true;
      out.outcome = out.turns === 0 ? 'stands' : 'rolls';
      if (out.place >= 0) out.outcome = 'rolls-through-place';
      return;
    }
    out.turns++;
    ahead = way > 0;
  }
}

function begin(node: number, speed: number, start: number, out: Roll): void {
  motion.node = node;
  motion.offset = 0;
  motion.u = (speed * speed) / 2;
  motion.time = 0;
  out.outcome = 'stands';
  out.at = out.leastAt = out.mostAt = start;
  out.time = 0;
  out.topSpeed = out.endSpeed = speed;
  out.place = -1;
  out.placeSpeed = 0;
  out.turns = 0;
  out.nearBalance = false;
}

/**
 * The time in which the brakes come on, rolling forward, in the few steps of the build-up with their exact
 * means. Left undone, for the march to do in small steps, where it might come to rest or meet something.
 */
function brakesComeOn(part: Part, start: number, out: Roll): void {
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
  if (node >= part.mostNode || mayTip(part, start, node, top)) return;
  motion.node = node;
  motion.offset = s - node * step;
  motion.u = (v * v) / 2;
  motion.time = part.fullAt;
  out.topSpeed = top;
  out.mostAt = s;
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
function direction(part: Part, time: number, out?: Roll): 1 | 0 | -1 {
  const { ground, step } = part;
  const j = wrapCell(part.loop, part.cells, motion.node);
  const x = motion.offset;
  const forward = slopeIn(ground.climb[j], ground.slopeForward[j], ground.slopeForward[j + 1], step, x);
  const back = slopeIn(-ground.back[j], ground.slopeBack[j], ground.slopeBack[j + 1], step, x);
  const hold = part.a + (part.braked ? brakeAt(part.model, time, 0) / part.model.inertia : 0);
  // Curves are in both slopes, holding: forward it needs −forward, backward +back.
  const pull = Math.max(-forward, back);
  if (out && Math.abs(pull - hold) < SLIM * Math.max(hold, pull)) out.nearBalance = true;
  if (pull <= hold) return 0;
  return -forward > back ? 1 : -1;
}

/** Slope of the cell's cubic at x. */
function slopeIn(rise: number, s0: number, s1: number, step: number, x: number): number {
  const t = x / step;
  return s0 * (1 - t) * (1 - 3 * t) + s1 * t * (3 * t - 2) + (rise / step) * 6 * t * (1 - t);
}

/** Rise of the cell's cubic from its left node to x. */
function riseIn(rise: number, s0: number, s1: number, step: number, x: number): number {
  const t = x / step;
  const u = 1 - t;
  return rise * t * t * (3 - 2 * t) + step * t * u * (s0 * u - s1 * t);
}

/** Brakes and resistance, m/s². */
function drag(part: Part, time: number, v: number): number {
  const free = part.a + v * (part.b + v * part.c);
  if (!part.braked) return free;
  const brake = time < part.fullAt ? brakeAt(part.model, time, v) : brakeForce(part.model.force, v);
  return free + brake / part.model.inertia;
}

/** One direction until rest (false) or until something ends the reckoning (true). */
function march(part: Part, way: 1 | -1, start: number, traffic: Traffic, out: Roll, path?: Path): boolean {
  const { step, ground, loop, cells } = part;
  const slope = way > 0 ? ground.slopeForward : ground.slopeBack;
  let { node, offset, u, time } = motion;
  let v = Math.sqrt(2 * u);
  let falling = false;
  for (;;) {
    if (offset === 0 && u > SLOW && !path && (!part.braked || time >= part.fullAt)) {
      motion.node = node;
      motion.u = u;
      motion.time = time;
      if (cruise(part, way, start, traffic, out)) {
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
    const first = drag(part, time, v);
    const guess = u - need - length * first;
    const then = guess > 0 ? Math.sqrt(2 * guess) : 0;
    const late = time + (2 * length) / (v + then + 1e-9);
    const mean = (first + drag(part, late, then)) / 2;
    const after = u - need - length * mean;
    if (!(after > 0)) {
      restIn(part, way, cell, j, x, length, (first + drag(part, late, 0)) / 2, u, v, time);
      note(part, out);
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
function cruise(part: Part, way: 1 | -1, start: number, traffic: Traffic, out: Roll): boolean {
  const { step, loop, cells, a, b, c, tip, placeAtRear } = part;
  const rise = way > 0 ? part.ground.climb : part.ground.back;
  const { force } = part.model;
  const share = part.braked ? 1 / part.model.inertia : 0;
  const mayTip = tip.length > 0;
  const watchPlaces = way < 0 && out.place < 0;
  const followed = way < 0 && traffic.followsAt > 0;
  const last = lastQuietNode(part, way, start);
  let { node, u, time } = motion;
  const first = node;
  let v = Math.sqrt(2 * u);
  let top = out.topSpeed;
  let at = wrapCell(loop, cells, node);
  let drag = dragFull(a, b, c, force, share, v);
  while (node !== last) {
    const before = way > 0 ? at : at === 0 && loop ? cells - 1 : at - 1;
    const next = way > 0 ? (at + 1 === cells && loop ? 0 : at + 1) : before;
    const need = rise[before];
    const guess = u - need - step * drag;
    if (!(guess > SLOW)) break;
    const then = Math.sqrt(2 * guess);
    let late = a + then * (b + then * c);
    if (share > 0) {
      const r = then / SPEED_STEP;
      const i = r < SPEED_NODES - 2 ? r | 0 : SPEED_NODES - 2;
      const t = Math.min(r - i, 1);
      late += share * (force[i] + t * (force[i + 1] - force[i]));
    }
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
function lastQuietNode(part: Part, way: 1 | -1, start: number): number {
  const { loop, cells, step, mostNode, leastNode } = part;
  const from = Math.round(start / step);
  if (way < 0) return Math.min(motion.node, loop ? from - cells + 1 : leastNode + 1);
  return Math.max(motion.node, (loop ? from + cells : mostNode) - 1);
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
function note(part: Part, out: Roll): void {
  out.at = motion.node * part.step + motion.offset;
  out.time = motion.time;
  out.endSpeed = 0;
  if (out.at < out.leastAt) out.leastAt = out.at;
  if (out.at > out.mostAt) out.mostAt = out.at;
}

/** Does something at this node end the reckoning? Notes places on the way. */
function meets(
  part: Part,
  way: 1 | -1,
  node: number,
  u: number,
  v: number,
  time: number,
  start: number,
  traffic: Traffic,
  out: Roll,
): boolean {
  const at = node * part.step;
  const j = wrapCell(part.loop, part.cells, node);
  if (part.tip.length > 0 && u > part.tip[j]) return ends(out, 'overturns');
  if (part.loop ? Math.abs(at - start) >= part.cells * part.step : false) return ends(out, 'runs-round');
  if (way > 0) {
    if (node >= part.mostNode) return ends(out, 'leaves-line');
    return false;
  }
  if (node <= part.leastNode) return ends(out, 'leaves-line');
  if (traffic.followsAt > 0 && at - part.rear <= start + traffic.followsAt * (time - traffic.followsAfter)) {
    return ends(out, 'meets-following');
  }
  notePlace(part, j, v, start, out);
  return false;
}

function ends(out: Roll, outcome: Roll['outcome']): true {
  out.outcome = outcome;
  return true;
}

/** The first place that its rear runs through against the running direction, unless it parted there. */
function notePlace(part: Part, j: number, v: number, start: number, out: Roll): void {
  const place = part.placeAtRear[j];
  if (place < 0 || out.place >= 0 || v < WALKING) return;
  if (place === part.placeAtRear[wrapCell(part.loop, part.cells, Math.round(start / part.step))]) return;
  out.place = place;
  out.placeSpeed = v;
}

/** Cell or node on the grid: round a loop, held to the ends of a line. */
const wrapCell = (loop: boolean, cells: number, cell: number): number => {
  if (!loop) return cell < 0 ? 0 : cell < cells ? cell : cells - 1;
  const j = cell % cells;
  return j < 0 ? j + cells : j;
};
