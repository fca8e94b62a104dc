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
import { brakeAt } from '../stopping/march.ts';
import type { Part } from './part.ts';
import type { Roll } from './types.ts';

/** What else is on the line. */
export interface Traffic {
  /** How far the head goes before it stands, m from the parting; Infinity: not reckoned with. */
  headStop: number;
  /** Following train: s behind, and its speed, m/s; speed 0: none. */
  followsAfter: number;
  followsAt: number;
}

export const noTraffic: Traffic = { headStop: Infinity, followsAfter: 0, followsAt: 0 };

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
  return part.braked ? free + brakeAt(part.model, time, v) / part.model.inertia : free;
}

/** One direction until rest (false) or until something ends the reckoning (true). */
function march(part: Part, way: 1 | -1, start: number, traffic: Traffic, out: Roll, path?: Path): boolean {
  const { step, ground, loop, cells } = part;
  const slope = way > 0 ? ground.slopeForward : ground.slopeBack;
  let { node, offset, u, time } = motion;
  let v = Math.sqrt(2 * u);
  let falling = false;
  for (;;) {
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
    const before = u;
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
    if (meets(part, way, node, u, v, time, start, before, traffic, out)) {
      out.at = at;
      out.time = time;
      out.endSpeed = v;
      return true;
    }
  }
}

/** A whole cell at a time; shorter while brakes come on, and where it creeps, for the sake of the time. */
function stride(part: Part, whole: number, u: number, v: number, time: number): number {
  if (part.braked && time < part.fullAt) {
    const short = v * BRAKING_STEP;
    return short < LEAST_STEP ? Math.min(LEAST_STEP, whole) : short < whole ? short : whole;
  }
  if (u > SLOW || whole < part.step / 8) return whole;
  return part.step / 8;
}

/** Where it comes to rest inside a cell, by halving; into `motion`. */
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
  let [low, high] = [0, length];
  for (let n = 0; n < 40; n++) {
    const d = (low + high) / 2;
    const left = u - (riseIn(rise, slope[j], slope[j + 1], step, x + way * d) - from) - mean * d;
    if (left > 0) low = d;
    else high = d;
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

/** Does something at this node end the reckoning? Notes places on the way. @param before v²/2 a cell earlier */
function meets(
  part: Part,
  way: 1 | -1,
  node: number,
  u: number,
  v: number,
  time: number,
  start: number,
  before: number,
  traffic: Traffic,
  out: Roll,
): boolean {
  const at = node * part.step;
  const j = wrapCell(part.loop, part.cells, node);
  if (part.tip.length > 0 && u > part.tip[j]) return ends(out, 'overturns');
  if (part.loop ? Math.abs(at - start) >= part.cells * part.step : false) return ends(out, 'runs-round');
  if (way > 0) {
    if (node >= part.mostNode) return ends(out, 'leaves-line');
    const past = at - start - traffic.headStop;
    if (past >= 0 && past < part.step) {
      const there = u + (past / part.step) * (before - u);
      if (there > (WALKING * WALKING) / 2) {
        out.placeSpeed = Math.sqrt(2 * there);
        return ends(out, 'meets-head');
      }
    }
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
