/**
 * The train as a row of bodies along the track, joined by couplers with slack, spring and damping.
 *
 *   m_i·a_i = F_i − S_i + T_i − T_{i−1} ∓ R_i      T = k·(|e| − z/2)·sign e + c·ė beyond the slack, else 0
 *
 * e extension of a coupler from the middle of its slack z (m), T pull behind vehicle i (N; a push is
 * negative; a coupler in pull never pushes), F effort, S grade, R rolling and brakes: dry, so that they hold
 * a standing vehicle and never turn it round. Leapfrog (symplectic, one force evaluation a step, places half a
 * step ahead of speeds): h = 0.1/ω with ω = 2·√(max k/min m), which no row of bodies exceeds and a twentieth
 * of what is stable without damping; a sine's peak is then met within 0.0013 of itself.
 */
import { type Potential, slopeAt } from '../line/potential.ts';

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
  /** N, ≥ 0, and the time of each, s. */
  readonly pull: Float64Array;
  readonly push: Float64Array;
  readonly pullAt: Float64Array;
  readonly pushAt: Float64Array;
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
  return stiffest > 0 ? Math.min(0.02, 0.05 / Math.sqrt(stiffest / lightest)) : 0.02;
}

/** Grade is read anew every so many steps: a few centimetres of way. */
const GRADE_EVERY = 8;

export function runRow(row: Row): RowResult {
  const { bodies, couplers, efforts, brakes } = row;
  const n = bodies.length;
  const h = stepOf(row);
  const v = Float64Array.from(row.speeds);
  const x = new Float64Array(n);
  const drive = new Float64Array(n);
  const dry = new Float64Array(n);
  const slope = new Float64Array(n);
  const e = Float64Array.from(couplers, (c) => c.start);
  const result = emptyResult(n, v, x, h);
  const steps = Math.ceil(row.time / h);
  drift(e, x, v, h / 2);
  for (let step = 0; step < steps; step++) {
    // Places, and so forces, are those of the middle of the step.
    const t = (step + 0.5) * h;
    for (let i = 0; i < n; i++) {
      const { grade, rolling, starting } = bodies[i];
      if (step % GRADE_EVERY === 0) slope[i] = grade ? slopeAt(grade, row.head + x[i]) : 0;
      drive[i] = -slope[i];
      dry[i] = v[i] === 0 ? starting : rolling;
    }
    for (const r of efforts) drive[r.vehicle] += r.force * rampAt(r, t);
    for (const r of brakes) dry[r.vehicle] += r.force * rampAt(r, t);
    couple(couplers, e, v, drive, t, result);
    for (let i = 0; i < n; i++)
      v[i] = kick(v[i], (drive[i] * h) / bodies[i].mass, (dry[i] * h) / bodies[i].mass);
    drift(e, x, v, h);
  }
  drift(e, x, v, -h / 2);
  return result;
}

function drift(e: Float64Array, x: Float64Array, v: Float64Array, h: number): void {
  for (let i = 0; i < x.length; i++) x[i] += v[i] * h;
  for (let i = 0; i < e.length; i++) e[i] += (v[i] - v[i + 1]) * h;
}

function emptyResult(n: number, speeds: Float64Array, ways: Float64Array, step: number): RowResult {
  const gaps = (): Float64Array => new Float64Array(Math.max(0, n - 1));
  return { pull: gaps(), push: gaps(), pullAt: gaps(), pushAt: gaps(), last: gaps(), speeds, ways, step };
}

const rampAt = ({ dead, rise }: Ramp, t: number): number =>
  t <= dead ? 0 : t >= dead + rise ? 1 : (t - dead) / rise;

/** Coupler forces onto the bodies, and the peaks so far. */
function couple(
  couplers: readonly RowCoupler[],
  e: Float64Array,
  v: Float64Array,
  drive: Float64Array,
  t: number,
  { pull, push, pullAt, pushAt, last }: RowResult,
): void {
  for (let i = 0; i < couplers.length; i++) {
    const c = couplers[i];
    const half = c.slack / 2;
    let force = 0;
    if (e[i] > half) force = Math.max(0, c.stiffness * (e[i] - half) + c.damping * (v[i] - v[i + 1]));
    else if (e[i] < -half) force = Math.min(0, c.stiffness * (e[i] + half) + c.damping * (v[i] - v[i + 1]));
    last[i] = force;
    drive[i] -= force;
    drive[i + 1] += force;
    if (force > pull[i]) {
      pull[i] = force;
      pullAt[i] = t;
    } else if (-force > push[i]) {
      push[i] = -force;
      pushAt[i] = t;
    }
  }
}

/** Speed after a kick; dry resistance takes away at most what there is. */
function kick(v: number, gained: number, lost: number): number {
  const moved = v + gained;
  return moved > lost ? moved - lost : moved < -lost ? moved + lost : 0;
}
