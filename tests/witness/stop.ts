/**
 * A stop, vehicle by vehicle, in plain small steps of time from the driver's decision to rest.
 *
 *   M·dv/dt = −[ B(t, v) + a + b·v + c·v² + Σ m_i·g·(grade_i + curve·bend_i) ]
 *
 * grade_i, bend_i mean rise over run and mean |κ| under vehicle i. Until the driver has reacted the power is
 * still on: the train does not slow, but a fall may speed it up. Each step is by the midpoint in time and
 * place. The ground under every vehicle is read at nodes some way apart and between them as a straight line
 * (it is one, but for the kinks), so that a thousand hands can be tried at one place.
 */
import { type Ground, meanBend, meanGrade } from './ground.ts';
import type { Friction, Hand } from './hand.ts';
import { brakeAt, brakedBy } from './slide.ts';
import { type Car, G } from './train.ts';

/** s */
export const STEP = 0.004;
/** A stop that lasts longer is none, s. */
const LONGEST = 900;
/** How far beyond the end of the line, or at least on a loop, a stop is followed, m. */
const BEYOND = 300;

/** The way ahead of one place: grade and bend under every vehicle at its nodes, filled as it is needed. */
export interface Way {
  readonly ground: Ground;
  readonly cars: readonly Car[];
  readonly from: number;
  readonly node: number;
  /** m: beyond it a train is given up. */
  readonly most: number;
  readonly grade: Float64Array;
  readonly bend: Float64Array;
  filled: number;
  /** N at each node for the hand in play. */
  readonly pull: Float64Array;
  pulled: number;
}

export function wayAhead(ground: Ground, cars: readonly Car[], from: number, node = 0.25): Way {
  const { line } = ground;
  const most = line.loop ? Math.max(line.length, BEYOND) : line.length - from + BEYOND;
  const nodes = Math.ceil(most / node) + 3;
  return {
    ground,
    cars,
    from,
    node,
    most,
    grade: new Float64Array(nodes * cars.length),
    bend: new Float64Array(nodes * cars.length),
    filled: 0,
    pull: new Float64Array(nodes),
    pulled: 0,
  };
}

/** Pull of the ground at x metres on, N; against the motion positive. */
export function pullAt(way: Way, hand: Hand, x: number): number {
  const r = x / way.node;
  const k = r | 0;
  while (way.pulled <= k + 1) layNode(way, hand);
  return way.pull[k] + (r - k) * (way.pull[k + 1] - way.pull[k]);
}

function layNode(way: Way, { mass, curve }: Hand): void {
  const { ground, cars, from, node, grade, bend, pull, pulled: k } = way;
  const n = cars.length;
  if (way.filled <= k) {
    for (let i = 0; i < n; i++) {
      const front = from + k * node - cars[i].front;
      const rear = front - cars[i].vehicle.length;
      grade[k * n + i] = meanGrade(ground, rear, front);
      bend[k * n + i] = meanBend(ground, rear, front);
    }
    way.filled = k + 1;
  }
  let force = 0;
  for (let i = 0; i < n; i++) force += mass[i] * (grade[k * n + i] + curve * bend[k * n + i]);
  pull[k] = force * G;
  way.pulled = k + 1;
}

export function frictionAt({ speed, share }: Friction, v: number): number {
  const last = speed.length - 1;
  if (last === 0 || v <= speed[0]) return share[0];
  if (v >= speed[last]) return share[last];
  let i = 0;
  while (speed[i + 1] < v) i++;
  return share[i] + ((share[i + 1] - share[i]) * (v - speed[i])) / (speed[i + 1] - speed[i]);
}

export interface Told {
  /** m; Infinity: it does not stop. */
  distance: number;
  time: number;
  top: number;
  /** m/s when all brakes are full on, and how much faster it still became, m/s. */
  full: number;
  gained: number;
  /** m/s where the watched distance was passed; 0: it stood before. */
  passed: number;
}

export const nothingTold = (): Told => ({ distance: 0, time: 0, top: 0, full: 0, gained: 0, passed: 0 });

export interface Asked {
  readonly step?: number;
  /** m at which the speed is told. */
  readonly watch?: number;
  /** m beyond which only that it went on matters: it is then said not to stop. */
  readonly enough?: number;
}

export function stop(way: Way, hand: Hand, v0: number, told: Told, asked: Asked = {}): void {
  const { step = STEP, watch = Infinity, enough = Infinity } = asked;
  const { inertia, a, b, c, reaction } = hand;
  way.pulled = 0;
  told.passed = 0;
  const most = Math.min(way.most, enough);
  let [x, v, time] = [0, v0, 0];
  let passed = false;
  const pass = (next: number, then: number): void => {
    if (passed || next < watch) return;
    passed = true;
    told.passed = next > x ? v + ((then - v) * (watch - x)) / (next - x) : then;
  };
  const steps = Math.ceil(reaction / step);
  const h = steps > 0 ? reaction / steps : 0;
  for (let n = 0; n < steps && x <= most; n++) {
    const drag = a + v * (b + v * c) + pullAt(way, hand, x + 0.5 * v * h);
    const then = v + (drag < 0 && v > 0 ? (-drag / inertia) * h : 0);
    const next = x + 0.5 * (v + then) * h;
    pass(next, then);
    x = next;
    v = then;
  }
  told.top = v;
  told.full = 0;
  told.gained = 0;
  const braked = brakedBy(hand);
  const { full } = braked;
  for (;;) {
    const brake = brakeAt(braked, time + 0.5 * step, v);
    const drag = brake + a + v * (b + v * c) + pullAt(way, hand, x + 0.5 * v * step);
    const then = v - (drag / inertia) * step;
    if (then <= 0) {
      const last = drag > 0 ? (v * v * inertia) / (2 * drag) : 0;
      pass(x + last, 0);
      told.distance = x + last;
      told.time = reaction + time + (v > 0 ? (2 * last) / v : 0);
      if (x + last > most) told.distance = Infinity;
      return;
    }
    const next = x + 0.5 * (v + then) * step;
    pass(next, then);
    x = next;
    v = then;
    time += step;
    if (v > told.top) told.top = v;
    if (time >= full) {
      if (told.full === 0) told.full = v;
      if (v - told.full > told.gained) told.gained = v - told.full;
    }
    if (x > most || time > LONGEST) {
      told.distance = Infinity;
      told.time = reaction + time;
      return;
    }
  }
}

export const risen = (t: number, dead: number, build: number): number =>
  t <= dead ? 0 : t >= dead + build ? 1 : (t - dead) / build;
