/**
 * The plain march: the same equation of motion stepped in time by the classical Runge–Kutta rule.
 *
 * Takes over where full brake barely holds the grade, and follows trains that do not stop at all. Slow and
 * robust; it ends at standstill, at the end of the potential's grid, or after MOST_TIME.
 */
import { slopeAt } from '../line/potential.ts';
import { RAMP_STEPS } from './kit.ts';
import { brakeForce, channelFactor, type StopModel, type StopTrace } from './model.ts';

const STEP = 0.05;
const MOST_TIME = 1800;

/** Force of all brakes at a time from the driver's action and a speed, N. */
export function brakeAt(model: StopModel, t: number, v: number): number {
  if (t <= 0) return 0;
  const r = model.dt > 0 ? t / model.dt : RAMP_STEPS;
  if (r >= RAMP_STEPS) return brakeForce(model.force, v);
  const k = Math.floor(r);
  let total = 0;
  for (let i = 0; i < model.channels; i++) {
    const from = model.node[i * (RAMP_STEPS + 1) + k];
    const to = model.node[i * (RAMP_STEPS + 1) + k + 1];
    total += (from + (r - k) * (to - from)) * channelFactor(model.factor, i, v);
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
  const { potential } = model;
  const end = potential.from + (potential.count - 1) * potential.step;
  const fullAt = model.reaction + model.dt * RAMP_STEPS;
  let [t, s, v] = [0, s0, v0];
  out.topSpeed = v0;
  out.beforeFullBrake = 0;
  while (t < MOST_TIME) {
    // A step never straddles the end of the reaction, where the acceleration jumps.
    const toReaction = model.reaction - t;
    const h = toReaction > 1e-9 ? Math.min(STEP, toReaction) : STEP;
    const mid = t + h / 2;
    const late = toReaction > 1e-9 ? t + h * (1 - 1e-9) : t + h;
    const k1 = acceleration(model, t, s, v);
    const k2 = acceleration(model, mid, s + (h / 2) * v, v + (h / 2) * k1);
    const k3 = acceleration(model, mid, s + (h / 2) * (v + (h / 2) * k1), v + (h / 2) * k2);
    const k4 = acceleration(model, late, s + h * (v + (h / 2) * k2), v + h * k3);
    const dv = (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    const ds = h * v + ((h * h) / 6) * (k1 + k2 + k3);
    if (v + dv <= 0) {
      const share = v / -dv;
      out.distance = s + share * h * (v / 2) - s0;
      out.time = t + share * h;
      if (t < fullAt) out.beforeFullBrake = out.distance;
      return;
    }
    s += ds;
    v += dv;
    t += h;
    if (v > out.topSpeed) out.topSpeed = v;
    if (t <= fullAt) out.beforeFullBrake = s - s0;
    if (s > end) break;
  }
  out.distance = Infinity;
  out.time = Infinity;
}
