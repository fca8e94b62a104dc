/**
 * The plain march: the same equation of motion stepped in time by the classical Runge–Kutta rule while the
 * brake builds up, then in small steps of distance.
 *
 * Takes over where full brake barely holds the grade, and follows trains that do not stop at all. Slower and
 * robust; it ends at standstill or at the end of the potential's grid.
 */
import { potentialAt, slopeAt } from '../line/potential.ts';
import { RAMP_STEPS } from './kit.ts';
import { brakeForce, channelFactor, type StopModel, type StopTrace } from './model.ts';

const STEP = 0.05;

/**
 * Force of all brakes at a time from the driver's action and a speed, N. Within a step of the build-up it is
 * the parabola through both ends that has the step's exact mean.
 */
export function brakeAt(model: StopModel, t: number, v: number): number {
  if (t <= 0) return 0;
  const r = model.dt > 0 ? t / model.dt : RAMP_STEPS;
  if (r >= RAMP_STEPS) return brakeForce(model.force, v);
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

export function marchStop(model: StopModel, s0: number, v0: number, out: StopTrace): void {
  const fullAt = model.reaction + model.dt * RAMP_STEPS;
  const end = model.potential.from + (model.potential.count - 1) * model.potential.step;
  let [t, s, v] = [0, s0, v0];
  out.topSpeed = v0;
  while (t < fullAt - 1e-9 && s <= end) {
    // A step never straddles the end of the reaction, where the acceleration jumps.
    const before = t < model.reaction - 1e-9;
    const h = Math.min(STEP, (before ? model.reaction : fullAt) - t);
    const late = before ? t + h * (1 - 1e-9) : t + h;
    const k1 = acceleration(model, t, s, v);
    const k2 = acceleration(model, t + h / 2, s + (h / 2) * v, v + (h / 2) * k1);
    const k3 = acceleration(model, t + h / 2, s + (h / 2) * (v + (h / 2) * k1), v + (h / 2) * k2);
    const k4 = acceleration(model, late, s + h * (v + (h / 2) * k2), v + h * k3);
    const dv = (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    if (v + dv <= 0) {
      const share = v / -dv;
      out.distance = s + share * h * (v / 2) - s0;
      out.time = t + share * h;
      out.beforeFullBrake = out.distance;
      return;
    }
    s += h * v + ((h * h) / 6) * (k1 + k2 + k3);
    v += dv;
    t += h;
    if (v > out.topSpeed) out.topSpeed = v;
  }
  out.beforeFullBrake = s - s0;
  marchFullBrake(model, s0, s, v, t, out);
}

/** Full brake from here on, in steps of distance: the potential by its differences, the forces by their mean. */
function marchFullBrake(
  model: StopModel,
  s0: number,
  from: number,
  v: number,
  t: number,
  out: StopTrace,
): void {
  const { potential, inertia, massFactor, a, b, c, force } = model;
  const end = potential.from + (potential.count - 1) * potential.step;
  const h = potential.step / 2;
  const drag = (speed: number): number => brakeForce(force, speed) + a + speed * (b + speed * c);
  let s = from;
  let u = (v * v) / 2;
  let speed = v;
  let time = t;
  let level = potentialAt(potential, s);
  while (s <= end) {
    const next = potentialAt(potential, s + h);
    const rise = (massFactor * (next - level)) / inertia;
    const here = (drag(speed) * h) / inertia;
    const guess = Math.max(0, u - rise - here);
    const after = u - rise - (here + (drag(Math.sqrt(2 * guess)) * h) / inertia) / 2;
    if (after <= 0) {
      const share = u / (u - after);
      out.distance = s + share * h - s0;
      out.time = time + (speed > 0 ? (2 * share * h) / speed : 0);
      return;
    }
    const then = Math.sqrt(2 * after);
    time += (2 * h) / (speed + then);
    u = after;
    speed = then;
    s += h;
    level = next;
    if (speed > out.topSpeed) out.topSpeed = speed;
  }
  out.distance = Infinity;
  out.time = Infinity;
}
