/**
 * A roll with neither power nor brake past marks: when and how fast, and where it comes to rest.
 *
 *   d(½·M·v²)/ds = −(R(v) + W′(s)),   dt = ds/v
 *
 * M mass with the inertia of the wheels (kg), R rolling resistance (N), W potential of grade and curves (J) as stops use it.
 * Steps of distance in the energy. Within a step the force is taken not to change much, so that speed falls evenly in time:
 * then the mean of v over the way is ⅔·(v₀² + v₀v₁ + v₁²)/(v₀ + v₁) and that of v² is (v₀² + v₁²)/2.
 *
 * Source: the equation of motion; held to its closed solutions for R = a + c·v² and a + b·v.
 */
import { GRAVITY } from '../base/constants.ts';
import { buildPotential, potentialAt, type Stretch } from '../things/line/potential.ts';
import type { Line } from '../things/line/types.ts';
import { type ResistanceTerms, resistanceAt } from '../things/train/resistance.ts';

/** m */
const STEP = 0.25;

/** The way from where it is let go, with its marks among its nodes. */
export interface Way {
  /** Node of each mark. */
  readonly marks: readonly number[];
  readonly s: Float64Array;
  /** Height energy and curve drag's work per metre of the curve constant, J, from the start. */
  readonly rise: Float64Array;
  readonly bend: Float64Array;
  readonly weight: number;
}

export interface Forces {
  readonly terms: ResistanceTerms;
  /** kg, with the wheels. */
  readonly inertia: number;
  /** m */
  readonly curve: number;
  /** True grade less the surveyed one, in the running direction. */
  readonly grade: number;
}

export interface Rolled {
  /** At the nodes of the way as far as it rolls: s and m/s; beyond, what it lacks to get there, as a speed below zero. */
  readonly time: Float64Array;
  readonly speed: Float64Array;
  /** m and s from the start; beyond the way as if it went on level from there. */
  readonly rest: number;
  readonly restTime: number;
}

/** @param line in the running direction @param marks chainages of the head, growing, beyond `from` @param beyond followed so far, m */
export function wayOf(
  line: Line,
  stretches: readonly Stretch[],
  from: number,
  marks: readonly number[],
  beyond: number,
): Way {
  const end = Math.max(from + STEP, ...marks) + beyond;
  const grid = Array.from({ length: Math.ceil((end - from) / STEP) + 1 }, (_, i) => from + i * STEP);
  const s = Float64Array.from([...new Set([...grid, ...marks])].sort((a, b) => a - b));
  const potential = (curve: number): Float64Array => {
    const p = buildPotential(line, stretches, from, end + 1, STEP, curve);
    const start = potentialAt(p, from);
    return s.map((at) => potentialAt(p, at) - start);
  };
  const rise = potential(0);
  const bend = potential(1).map((w, i) => w - rise[i]);
  const weight = stretches.reduce((sum, { mass }) => sum + mass, 0) * GRAVITY;
  return { marks: marks.map((m) => s.indexOf(m)), s, rise, bend, weight };
}

export function roll({ s, rise, bend, weight }: Way, forces: Forces, v0: number): Rolled {
  const { terms, inertia, curve, grade } = forces;
  const n = s.length;
  const time = new Float64Array(n);
  const speed = new Float64Array(n);
  let [u, v] = [(v0 * v0) / 2, v0];
  let [rest, restTime] = [Infinity, Infinity];
  speed[0] = v0;
  for (let i = 0; i + 1 < n; i++) {
    const h = s[i + 1] - s[i];
    const up = rise[i + 1] - rise[i] + curve * (bend[i + 1] - bend[i]) + grade * weight * h;
    let after = u - (up + h * resistanceAt(terms, v)) / inertia;
    for (let again = 0; again < 2; again++)
      after = u - (up + h * meanResistance(terms, v, Math.sqrt(2 * Math.max(after, 0)))) / inertia;
    if (rest === Infinity && after <= 0) {
      const x = u > 0 ? (inertia * u) / (up / h + meanResistance(terms, v, 0)) : 0;
      rest = s[i] - s[0] + x;
      restTime = time[i] + timeOf(x, v, 0, terms, inertia);
    }
    u = after;
    const then = Math.sqrt(2 * Math.max(u, 0));
    time[i + 1] = rest < Infinity ? restTime : time[i] + timeOf(h, v, then, terms, inertia);
    speed[i + 1] = Math.sign(u) * Math.sqrt(2 * Math.abs(u));
    v = then;
  }
  if (rest === Infinity) {
    const x = (inertia * u) / meanResistance(terms, v, 0);
    rest = s[n - 1] - s[0] + x;
    restTime = time[n - 1] + timeOf(x, v, 0, terms, inertia);
  }
  return { time, speed, rest, restTime };
}

/** How far it has come by a time, m: where it came to rest, ever after. */
export function placeAt({ s }: Way, { time, speed, rest, restTime }: Rolled, t: number): number {
  if (t >= restTime) return rest;
  let [low, high] = [0, s.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (time[middle] <= t) low = middle;
    else high = middle;
  }
  const [v, h] = [speed[low], t - time[low]];
  const whole = Math.min(time[high], restTime) - time[low];
  const slows = whole > 0 ? (v - Math.max(speed[high], 0)) / whole : 0;
  return s[low] - s[0] + h * (v - (slows * h) / 2);
}

/** Over a stretch of the way, N. */
function meanResistance({ a, b, c }: ResistanceTerms, v: number, w: number): number {
  const along = v + w > 0 ? ((2 / 3) * (v * v + v * w + w * w)) / (v + w) : 0;
  return a + b * along + (c * (v * v + w * w)) / 2;
}

/**
 * Time over a stretch h, s: h/v̄·(1 + k·d·h/(6·v̄²)), v̄ the mean of the speeds at its ends, d half their difference, k the
 * growth of the deceleration with speed; to the first order in k.
 */
function timeOf(h: number, v: number, w: number, { b, c }: ResistanceTerms, inertia: number): number {
  const middle = (v + w) / 2;
  if (!(middle > 0)) return 0;
  const growth = (b + 2 * c * middle) / inertia;
  return (h / middle) * (1 + (growth * ((v - w) / 2) * h) / (6 * middle * middle));
}
