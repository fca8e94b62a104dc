/**
 * The train as a row of bodies along the track, joined by couplers with slack, spring and damping.
 *
 *   m_i·a_i = F_i − S_i + T_i − T_{i−1} ∓ R_i      T = k·(|e| − z/2)·sign e + c·ė beyond the slack, else 0
 *
 * e extension of a coupler from the middle of its slack z (m), T pull behind vehicle i (N; a push is
 * negative; a coupler in pull never pushes), F effort, S grade, R rolling and brakes: dry, so that they hold
 * a standing vehicle and never turn it round. Leapfrog (one force evaluation a step, places half a step ahead of
 * speeds): h = 0.2/ω with ω = 2·√(max k/min m), which no row of bodies exceeds and a tenth of what is stable
 * without damping, and no more than 0.1·min m/max c, a quarter of what is stable without springs. Damping takes
 * speeds carried on to the middle of the step, and where the slack ends within a step only the rest of it counts,
 * so that the order is two. A sine's peak is met within 0.005 of itself.
 */
import { type Potential, slopeAt } from '../things/line/potential.ts';

export interface RowBody {
  /** With the inertia of its wheels, kg. */
  readonly mass: number;
  /** Dry resistance on the move and from rest, N. */
  readonly rolling: number;
  readonly starting: number;
  /** Grade by the chainage of the train's head as if all stood stretched alike; absent: level. */
  readonly grade?: Potential;
}

export interface RowCoupler {
  /** Whole free movement, m. */
  readonly slack: number;
  /** N/m */
  readonly stiffness: number;
  /** N·s/m */
  readonly damping: number;
  /** Extension at the start, m, from −slack/2 (bunched) to slack/2 (stretched). */
  readonly start: number;
}

/** A force that begins after a dead time and rises linearly. */
export interface Ramp {
  readonly vehicle: number;
  /** N */
  readonly force: number;
  /** s */
  readonly dead: number;
  readonly rise: number;
}

export interface Row {
  readonly bodies: readonly RowBody[];
  readonly couplers: readonly RowCoupler[];
  readonly efforts: readonly Ramp[];
  readonly brakes: readonly Ramp[];
  /** Head's chainage, m, and the speed of all, m/s. */
  readonly head: number;
  readonly speeds: readonly number[];
  /** s */
  readonly time: number;
}

export interface RowResult {
  /** Peaks of each gap, N, ≥ 0. */
  readonly pull: Float64Array;
  readonly push: Float64Array;
  /** At the end: pull behind each vehicle (N), speeds (m/s), ways run (m). */
  readonly last: Float64Array;
  readonly speeds: Float64Array;
  readonly ways: Float64Array;
  readonly step: number;
}

/** Step, s. @throws RangeError where a mass is not positive */
export function stepOf({ bodies, couplers }: Pick<Row, 'bodies' | 'couplers'>): number {
  const lightest = bodies.reduce((m, b) => Math.min(m, b.mass), Infinity);
  if (!(lightest > 0)) throw new RangeError('every body needs a mass above zero');
  const stiffest = couplers.reduce((k, c) => Math.max(k, c.stiffness), 0);
  const dullest = couplers.reduce((k, c) => Math.max(k, c.damping), 0);
  return Math.min(LONGEST_STEP, 0.1 * Math.sqrt(lightest / stiffest), (0.1 * lightest) / dullest);
}

/** s */
const LONGEST_STEP = 0.02;

/** Grade is read anew every so many steps: a few centimetres of way. */
const GRADE_EVERY = 8;

export function runRow(row: Row): RowResult {
  const h = stepOf(row);
  const steps = Math.ceil(row.time / h);
  const state = stateOf(row, h);
  drift(state, h / 2);
  for (let step = 0; step < steps; step++) {
    // Places, and so forces, are those of the middle of the step.
    const t = (step + 0.5) * h;
    const looks = step % GRADE_EVERY === 0;
    if (looks) readGrades(row, state);
    if (looks || t <= state.settled) gather(row, state, t);
    const stood = looks && t > state.settled && stands(state.v);
    advance(state);
    // It stood, stands, and nothing that acts will change: it stands for good.
    if (stood && stands(state.v)) break;
  }
  drift(state, -h / 2);
  findWays(state);
  return state.result;
}

/** Everything that a step touches, flat: a force on a body as the speed that it gives in one step, m/s. */
interface State {
  readonly h: number;
  readonly e: Float64Array;
  /** Speeds, and those speeds carried on by half a step. */
  readonly v: Float64Array;
  readonly carried: Float64Array;
  /** Way of the first body, m; those of the others follow from the couplers between. */
  readonly lead: Float64Array;
  readonly starts: Float64Array;
  /** Speed per force in one step, h/m, s/kg. */
  readonly gain: Float64Array;
  /** Drive, and dry resistance on the move and from rest, m/s. */
  readonly drive: Float64Array;
  readonly rolling: Float64Array;
  readonly starting: Float64Array;
  /** Force of the grade, N. */
  readonly slope: Float64Array;
  /** Of each coupler: half the slack, m, stiffness and damping. */
  readonly half: Float64Array;
  readonly stiffness: Float64Array;
  readonly damping: Float64Array;
  /** From when on every ramp stays as it is, s. */
  readonly settled: number;
  readonly result: RowResult;
}

function stateOf({ bodies, couplers, efforts, brakes, speeds }: Row, h: number): State {
  const n = bodies.length;
  const v = Float64Array.from(speeds);
  const starts = Float64Array.from(couplers, (c) => c.start);
  return {
    h,
    e: starts.slice(),
    v,
    carried: v.slice(),
    lead: new Float64Array(1),
    starts,
    gain: Float64Array.from(bodies, (b) => h / b.mass),
    drive: new Float64Array(n),
    rolling: new Float64Array(n),
    starting: new Float64Array(n),
    slope: new Float64Array(n),
    half: Float64Array.from(couplers, (c) => c.slack / 2),
    stiffness: Float64Array.from(couplers, (c) => c.stiffness),
    damping: Float64Array.from(couplers, (c) => c.damping),
    // One step more, so that all are gathered once when full.
    settled: [...efforts, ...brakes].reduce((last, r) => Math.max(last, r.dead + r.rise), 0) + h,
    result: emptyResult(v, h),
  };
}

function emptyResult(speeds: Float64Array, step: number): RowResult {
  const gaps = (): Float64Array => new Float64Array(Math.max(0, speeds.length - 1));
  const ways = new Float64Array(speeds.length);
  return { pull: gaps(), push: gaps(), last: gaps(), speeds, ways, step };
}

function drift({ e, v, lead }: State, h: number): void {
  lead[0] += v[0] * h;
  for (let i = 0; i < e.length; i++) e[i] += (v[i] - v[i + 1]) * h;
}

function findWays({ e, starts, lead, result: { ways } }: State): void {
  ways[0] = lead[0];
  for (let i = 0; i < e.length; i++) ways[i + 1] = ways[i] - (e[i] - starts[i]);
}

function readGrades({ bodies, head }: Row, state: State): void {
  findWays(state);
  const { ways } = state.result;
  for (let i = 0; i < ways.length; i++) {
    const { grade } = bodies[i];
    if (grade) state.slope[i] = slopeAt(grade, head + ways[i]);
  }
}

/** What acts on each body from outside at a time. */
function gather({ bodies, efforts, brakes }: Row, state: State, t: number): void {
  const { drive, rolling, starting, gain, slope } = state;
  for (let i = 0; i < gain.length; i++) {
    drive[i] = -slope[i] * gain[i];
    rolling[i] = bodies[i].rolling * gain[i];
    starting[i] = bodies[i].starting * gain[i];
  }
  for (const r of efforts) drive[r.vehicle] += r.force * rampAt(r, t) * gain[r.vehicle];
  for (const r of brakes) {
    const held = r.force * rampAt(r, t) * gain[r.vehicle];
    rolling[r.vehicle] += held;
    starting[r.vehicle] += held;
  }
}

const rampAt = ({ dead, rise }: Ramp, t: number): number =>
  t <= dead ? 0 : t >= dead + rise ? 1 : (t - dead) / rise;

const stands = (v: Float64Array): boolean => v.every((speed) => speed === 0);

/**
 * One step in one sweep from the front: the coupler behind a body by the speeds before the step, the body's own
 * new speed, then the coupler ahead of it, for both its bodies are then done.
 */
function advance(state: State): void {
  const { h, e, v, carried, lead, gain, drive, rolling, starting, half, stiffness, damping } = state;
  const { pull, push, last } = state.result;
  const gaps = e.length;
  let ahead = 0;
  let stretchAhead = 0;
  let speedAhead = 0;
  let now = carried[0];
  for (let i = 0; i <= gaps; i++) {
    const was = v[i];
    let force = 0;
    let stretch = 0;
    if (i < gaps) {
      const next = carried[i + 1];
      stretch = e[i];
      force =
        stretch > 0
          ? tension(stretch - half[i], now - next, h, stiffness[i], damping[i])
          : -tension(-stretch - half[i], next - now, h, stiffness[i], damping[i]);
      if (force > pull[i]) pull[i] = force;
      else if (-force > push[i]) push[i] = -force;
      last[i] = force;
      now = next;
    }
    const speed = kick(was, drive[i] + (ahead - force) * gain[i], was === 0 ? starting[i] : rolling[i]);
    v[i] = speed;
    carried[i] = speed + (speed - was) / 2;
    if (i > 0) e[i - 1] = stretchAhead + (speedAhead - speed) * h;
    ahead = force;
    stretchAhead = stretch;
    speedAhead = speed;
  }
  lead[0] += v[0] * h;
}

/**
 * Mean force over a step of a coupler that is x beyond its slack in the middle of it and opens at w; the share of
 * the step before the slack has run out counts nothing.
 */
function tension(x: number, w: number, h: number, stiffness: number, damping: number): number {
  const reach = (Math.abs(w) * h) / 2;
  if (x >= reach) return Math.max(0, stiffness * x + damping * w);
  if (x <= -reach) return 0;
  const most = x + reach;
  return Math.max(0, (most / (2 * reach)) * ((stiffness * most) / 2 + damping * w));
}

/** Speed after a kick; dry resistance takes away at most what there is. */
function kick(v: number, gained: number, lost: number): number {
  const moved = v + gained;
  return moved > lost ? moved - lost : moved < -lost ? moved + lost : 0;
}
