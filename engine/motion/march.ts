/**
 * The plain march: the same equation of motion stepped in time by the classical Runge–Kutta rule while the
 * brake builds up, then in small steps of distance.
 *
 * Takes over where full brake barely holds the grade, and follows trains that do not stop at all. Slower and
 * robust; it ends at standstill, at the lower speed asked for, or at the end of the potential's grid.
 */

import { firstZero } from '../base/roots.ts';
import { potentialAt, slopeAt } from '../things/line/potential.ts';
import { brakeForce, channelFactor, type StopModel, type StopTrace, settledAfter } from './model.ts';
import { RAMP_STEPS } from './stop-inputs.ts';

const STEP = 0.05;

/**
 * Force of all brakes at a time from the driver's action and a speed, N. Within a step of the build-up it is
 * the parabola through both ends that has the step's exact mean.
 */
export function brakeAt(model: StopModel, t: number, v: number): number {
  if (t <= 0) return 0;
  const r = model.dt > 0 ? t / model.dt : RAMP_STEPS;
  if (r >= RAMP_STEPS) {
    return brakeForce(t < model.dt * RAMP_STEPS + model.notice ? model.early : model.force, v);
  }
  const k = Math.floor(r);
  let total = 0;
  for (let i = 0; i < model.channels; i++) {
    const from = model.node[i * (RAMP_STEPS + 1) + k];
    const to = model.node[i * (RAMP_STEPS + 1) + k + 1];
    const x = r - k;
    const bow = 6 * (model.mean[i * RAMP_STEPS + k] - (from + to) / 2);
    total += (from + x * (to - from + bow * (1 - x))) * channelFactor(model.factor, i, v);
  }
  return total;
}

/** dv/dt, m/s², at time t from the start of the reaction. */
export function acceleration(model: StopModel, t: number, s: number, v: number): number {
  const pull = model.a + v * (model.b + v * model.c) + model.massFactor * slopeAt(model.potential, s);
  if (t < model.reaction) return pull < 0 ? -pull / model.inertia : 0;
  const brake = brakeAt(model, t - model.reaction, Math.max(v, 0));
  return -(brake + pull) / model.inertia;
}

/** @param w speed at which it ends, m/s, < v0 or 0 */
export function marchStop(model: StopModel, s0: number, v0: number, out: StopTrace, w = 0): void {
  const builtUp = model.reaction + model.dt * RAMP_STEPS;
  const settled = settledAfter(model);
  const end = model.potential.from + (model.potential.count - 1) * model.potential.step;
  let [t, s, v] = [0, s0, v0];
  out.topSpeed = v0;
  let beforeFull = Infinity;
  while (t < settled - 1e-9 && s <= end) {
    // A step never straddles the end of the reaction, or the moment of easing, where the acceleration jumps.
    const next = t < model.reaction - 1e-9 ? model.reaction : t < builtUp - 1e-9 ? builtUp : settled;
    if (next === settled && beforeFull === Infinity) beforeFull = s - s0;
    const before = t < model.reaction - 1e-9;
    const h = Math.min(STEP, next - t);
    const late = t + h * (1 - 1e-9);
    const k1 = acceleration(model, t, s, v);
    const k2 = acceleration(model, t + h / 2, s + (h / 2) * v, v + (h / 2) * k1);
    const k3 = acceleration(model, t + h / 2, s + (h / 2) * (v + (h / 2) * k1), v + (h / 2) * k2);
    const k4 = acceleration(model, late, s + h * (v + (h / 2) * k2), v + h * k3);
    const dv = (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    if (!before && v + dv <= w) {
      const share = (v - w) / -dv;
      out.distance = s + share * h * ((v + w) / 2) - s0;
      out.time = t + share * h;
      out.beforeFullBrake = Math.min(beforeFull, out.distance);
      return;
    }
    s += h * v + ((h * h) / 6) * (k1 + k2 + k3);
    v += dv;
    t += h;
    if (v > out.topSpeed) out.topSpeed = v;
  }
  out.beforeFullBrake = Math.min(beforeFull, s - s0);
  marchFullBrake(model, s0, s, v, t, w, out);
}

/**
 * Full brake from here on, from node to node of the potential: the grade by its exact differences, the forces
 * by their mean over the cell. All in one loop on plain numbers, for it may go over the whole line.
 */
function marchFullBrake(
  model: StopModel,
  s0: number,
  from: number,
  v: number,
  t: number,
  w: number,
  out: StopTrace,
): void {
  const { potential, inertia, massFactor, a, b, c, force } = model;
  const { W, step, count } = potential;
  const grade = massFactor / inertia;
  const share = 1 / inertia;
  const end = (w * w) / 2;
  // The first node strictly ahead, so that no stretch is empty.
  let node = Math.max(0, Math.floor((from - potential.from) / step + 1e-9) + 1);
  let s = from;
  let level = potentialAt(potential, from);
  let u = (v * v) / 2;
  let speed = v;
  let time = t;
  let top = out.topSpeed;
  let drag = share * (brakeForce(force, v) + a + v * (b + v * c));
  for (; node < count; node++) {
    const length = potential.from + node * step - s;
    const rise = grade * (W[node] - level);
    const guess = u - rise - length * drag;
    const then = guess > 0 ? Math.sqrt(2 * guess) : 0;
    const late = share * (brakeForce(force, then) + a + then * (b + then * c));
    const mean = 0.5 * (drag + late);
    const after = u - rise - length * mean;
    if (!(after > end)) {
      const base = level;
      const left = (x: number): number => u - end - grade * (potentialAt(potential, s + x) - base) - mean * x;
      const x = firstZero(left, length);
      out.distance = s + x - s0;
      out.time = time + (speed + w > 0 ? (2 * x) / (speed + w) : 0);
      out.topSpeed = top;
      return;
    }
    const reached = then > 0 ? then + (after - guess) / then : Math.sqrt(2 * after);
    time += (2 * length) / (speed + reached);
    u = after;
    speed = reached;
    drag = late;
    if (speed > top) top = speed;
    s = potential.from + node * step;
    level = W[node];
  }
  out.topSpeed = top;
  out.distance = Infinity;
  out.time = Infinity;
}
