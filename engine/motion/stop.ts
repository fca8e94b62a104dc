/**
 * How far and how long to stop, or to slow to a lower speed.
 *
 *   inertia·dv/dt = −[ r(t)·G(v) + R(v) + m·W′(s) ]
 *
 * r share of full brake (0…1), G full brake (N), R = a + b·v + c·v² (N), W′ pull of grade and curves (N),
 * m mass factor of the scenario, t counted from the driver's action.
 *
 * Four parts, each integrated in the variable that makes it nearly exact:
 *  1. reaction: power still on, so the train never slows by itself, but a fall may speed it up;
 *  2. build-up: in time, the brake's impulse and its effect on distance by exact integrals over each step;
 *  3. where wheels slide: in time at full brake until the driver notices and eases;
 *  4. for the rest: in speed, by energy, so that grade enters exactly and the end is met without iteration.
 * Where the brake barely holds the grade, the plain march in `march.ts` takes over.
 *
 * Errors: ≤ 1e-3 of the distance against independent integrators (tests/numerics/stop).
 */

import { firstZero } from '../base/roots.ts';
import type { Potential } from '../things/line/potential.ts';
import { spotAdds } from './bad-spot.ts';
import { stopByPlace } from './by-place.ts';
import { marchStop } from './march.ts';
import { brakeForce, channelFactor, type StopModel, type StopTrace } from './model.ts';
import { meetsOther } from './rails.ts';
import { RAMP_STEPS } from './stop-inputs.ts';

/** Length that one step of part 1 should cover, m, and the most steps. */
const REACTION_STEP_LENGTH = 0.75;
const MOST_REACTION_STEPS = 10;
/** Steps of part 3. */
const NOTICE_STEPS = 5;
/** Most and least steps of part 4; the model says what length one should cover. */
const MOST_BRAKE_STEPS = 64;
const LEAST_BRAKE_STEPS = 5;
/** A step of part 4 is corrected again while its last correction exceeds this share of it. */
const CORRECT_FROM = 0.02;
const MOST_CORRECTIONS = 4;
/** Net force below this share of brake and resistance is left to the plain march. */
const NEAR_BALANCE = 0.3;

function slopeOf(potential: Potential, s: number): number {
  const { W, slope, step } = potential;
  const r = (s - potential.from) / step;
  let j = r | 0;
  if (j < 0) j = 0;
  else if (j > potential.count - 2) j = potential.count - 2;
  const t = r - j;
  return (
    slope[j] * (1 - t) * (1 - 3 * t) +
    slope[j + 1] * t * (3 * t - 2) +
    ((W[j + 1] - W[j]) / step) * 6 * t * (1 - t)
  );
}

/** W at a chainage on the grid. */
function levelOf(potential: Potential, s: number): number {
  const { W, slope, step } = potential;
  const r = (s - potential.from) / step;
  let j = r | 0;
  if (j < 0) j = 0;
  else if (j > potential.count - 2) j = potential.count - 2;
  const t = r - j;
  const u = 1 - t;
  return (
    W[j] * (1 + 2 * t) * u * u +
    W[j + 1] * t * t * (3 - 2 * t) +
    step * t * u * (slope[j] * u - slope[j + 1] * t)
  );
}

/**
 * Stop from chainage s0 and speed v0 into `out`; distance is Infinity where the train does not come to a
 * stand within the potential's grid.
 *
 * @param s0 m, on the potential's grid
 * @param v0 m/s, ≥ 0
 */
export function stopInto(model: StopModel, s0: number, v0: number, out: StopTrace): void {
  slowInto(model, s0, v0, 0, out);
}

/**
 * Slow from speed v0 to w: the stop from v0, followed until the train first runs at w under the brake.
 *
 * @param w m/s, 0 ≤ w < v0, or both 0
 */
export function slowInto(model: StopModel, s0: number, v0: number, w: number, out: StopTrace): void {
  slowAlone(model, s0, v0, w, out);
  for (const other of model.beside) {
    if (out.distance === Infinity) return;
    slowAlone(other, s0, v0, w, other.trace);
    if (other.trace.distance > out.distance) Object.assign(out, other.trace);
  }
}

/** The one of a model's scenarios that tells a stop, by itself. */
export function telling(model: StopModel, s0: number, v0: number): StopModel {
  let longest = model;
  const alone = (one: StopModel): number => {
    slowAlone(one, s0, v0, 0, one.trace);
    return one.trace.distance;
  };
  let most = alone(model);
  for (const other of model.beside) {
    const distance = alone(other);
    if (distance > most) [longest, most] = [other, distance];
  }
  return longest === model ? { ...model, beside: [] } : longest;
}

function slowAlone(model: StopModel, s0: number, v0: number, w: number, out: StopTrace): void {
  slowWithoutSpot(model, s0, v0, w, out);
  const { rails } = model;
  if (rails && meetsOther(rails, model.length, s0, s0 + out.distance))
    stopByPlace(model, rails, s0, v0, w, out);
  if (model.spot > 0) out.distance += spotAdds(model, s0, v0, out);
}

function slowWithoutSpot(model: StopModel, s0: number, v0: number, w: number, out: StopTrace): void {
  const { potential, inertia, massFactor, a, b, c, force, mean, lead, factor, channels, dt, stride } = model;
  const end = potential.from + (potential.count - 1) * potential.step;
  let s = s0;
  let v = v0;
  let time = model.reaction;
  let top = v0;
  const reach = (v0 * model.reaction) / REACTION_STEP_LENGTH;
  const reactionSteps = reach < MOST_REACTION_STEPS ? 1 + (reach | 0) : MOST_REACTION_STEPS;
  const hr = model.reaction / reactionSteps;
  for (let k = 0; k < reactionSteps; k++) {
    const pull = a + v * (b + v * c) + massFactor * slopeOf(potential, s + 0.5 * v * hr);
    const gain = pull < 0 && v > 0 ? -pull / inertia : 0;
    s += hr * (v + 0.5 * gain * hr);
    v += gain * hr;
  }
  if (v > top) top = v;
  out.speedAtAction = v;
  let slowing = 0;
  for (let k = 0; k < RAMP_STEPS && v > 0; k++) {
    let middle = v - 0.5 * slowing;
    if (middle < 0) middle = 0;
    const pull =
      a + middle * (b + middle * c) + massFactor * slopeOf(potential, s + 0.5 * (v + middle) * 0.5 * dt);
    let effort = 0;
    let shift = 0;
    for (let i = 0; i < channels; i++) {
      const f = i === 0 ? 1 : channelFactor(factor, i, middle);
      effort += f * mean[i * RAMP_STEPS + k];
      shift += f * lead[i * RAMP_STEPS + k];
    }
    slowing = ((effort + pull) * dt) / inertia;
    if (slowing >= v - w) {
      withinStep(model, k, v, v - w, pull, out);
      out.distance += s - s0;
      out.beforeFullBrake = out.distance;
      out.time += time;
      out.topSpeed = top;
      if (s0 + out.distance > end) out.distance = Infinity;
      return;
    }
    s += dt * (v - ((shift + 0.5 * pull) * dt) / inertia);
    v -= slowing;
    time += dt;
    if (v > top) top = v;
  }
  out.beforeFullBrake = s - s0;
  if (model.notice > 0) {
    const h = model.notice / NOTICE_STEPS;
    for (let k = 0; k < NOTICE_STEPS; k++) {
      const first = netEarly(model, v, s);
      let middle = v - (0.5 * h * first) / inertia;
      if (middle < 0) middle = 0;
      const net = netEarly(model, middle, s + 0.25 * h * (v + middle));
      const slower = (h * net) / inertia;
      if (slower >= v - w) {
        const t = ((v - w) * inertia) / net;
        out.distance = s + ((v + w) * t) / 2 - s0;
        out.time = time + t;
        out.topSpeed = top;
        if (s0 + out.distance > end) out.distance = Infinity;
        return;
      }
      s += h * (v - 0.5 * slower);
      v -= slower;
      time += h;
      if (v > top) top = v;
    }
  }
  out.topSpeed = top;
  let level = levelOf(potential, s);
  let pull = slopeOf(potential, s);
  let reached = level;
  let half = 0.5 * v * v;
  const last = 0.5 * w * w;
  const expected = (inertia * (half - last)) / (brakeForce(force, v) + a + massFactor * pull);
  let steps = LEAST_BRAKE_STEPS;
  if (!(expected >= 0 && expected < MOST_BRAKE_STEPS * stride)) steps = MOST_BRAKE_STEPS;
  else if (expected > LEAST_BRAKE_STEPS * stride) steps = Math.ceil(expected / stride);
  const u = (half - last) / steps;
  let speed = v;
  for (let k = 0; k < steps; k++) {
    const vm = Math.sqrt(2 * half - u);
    const hold = brakeForce(force, vm) + a + vm * (b + vm * c);
    const net = hold + massFactor * pull;
    if (!(net > NEAR_BALANCE * hold) || s > end) {
      marchStop(model, s0, v0, out, w);
      return;
    }
    let step = (inertia * u) / net;
    let more = step;
    for (let n = 0; n < MOST_CORRECTIONS && Math.abs(more) > CORRECT_FROM * step; n++) {
      const next = levelOf(potential, s + step);
      pull = slopeOf(potential, s + step);
      const tail = hold + massFactor * pull;
      if (!(tail > NEAR_BALANCE * hold)) {
        marchStop(model, s0, v0, out, w);
        return;
      }
      more = (inertia * u - hold * step - massFactor * (next - level)) / tail;
      step += more;
      reached = next + more * pull;
    }
    level = reached;
    s += step;
    half = Math.max(half - u, last);
    const after = Math.sqrt(2 * half);
    time += (2 * step) / (speed + after);
    speed = after;
  }
  out.distance = s > end ? Infinity : s - s0;
  out.time = time;
}

/** All that holds back at full brake, before it is eased, N. */
function netEarly({ early, a, b, c, massFactor, potential }: StopModel, v: number, s: number): number {
  return brakeForce(early, v) + a + v * (b + v * c) + massFactor * slopeOf(potential, s);
}

/**
 * A fall of the speed reached inside a build-up step. The brake within the step is the parabola through both
 * ends that has the step's exact mean.
 */
function withinStep(
  model: StopModel,
  k: number,
  v: number,
  fall: number,
  pull: number,
  out: StopTrace,
): void {
  const { node, mean, factor, channels, dt, inertia } = model;
  let [first, last, middle] = [0, 0, 0];
  for (let i = 0; i < channels; i++) {
    const f = channelFactor(factor, i, v - fall / 2);
    first += f * node[i * (RAMP_STEPS + 1) + k];
    last += f * node[i * (RAMP_STEPS + 1) + k + 1];
    middle += f * mean[i * RAMP_STEPS + k];
  }
  const bow = 6 * (middle - (first + last) / 2);
  const bend = last - first + bow;
  // Speed still to lose after the share x of the step.
  const left = (x: number): number =>
    fall - ((dt * x) / inertia) * (first + pull + x * (bend / 2 - (x * bow) / 3));
  const x = firstZero(left, 1);
  out.time = dt * x;
  out.distance = dt * x * (v - ((dt * x) / inertia) * ((first + pull) / 2 + x * (bend / 6 - (x * bow) / 12)));
}

/** Distance to stop, m; Infinity where it does not. */
export function stopDistance(model: StopModel, s0: number, v0: number): number {
  stopInto(model, s0, v0, model.trace);
  return model.trace.distance;
}

/** Distance to slow from v0 to w ≥ 0, m; 0 from no faster than w; Infinity where the speed does not fall to it. */
export function slowingDistance(model: StopModel, s0: number, v0: number, w: number): number {
  if (v0 <= w) return 0;
  slowInto(model, s0, v0, w, model.trace);
  return model.trace.distance;
}
