/**
 * A stop over rail in more than one state, stepped in time (midpoint): the law is in `rails.ts`.
 *
 * Slower than the march of one rail, so only stops that meet another rail come here.
 */
import { slopeAt } from '../things/line/potential.ts';
import { brakeAt } from './march.ts';
import { brakeForce, type StopModel, type StopTrace } from './model.ts';
import { easedBy, moreThere, type RailPlace, type Rails, shareOn, shareOnOwn } from './rails.ts';
import { RAMP_STEPS } from './stop-inputs.ts';

/** s */
const STEP = 0.05;
/** A stop that lasts longer than so many steps is none. */
const MOST_STEPS = 20_000;

/** Times since the decision and places of the head, step by step, for what a driver noticed a while ago. */
const times = new Float64Array(MOST_STEPS + 1);
const places = new Float64Array(MOST_STEPS + 1);

/** One rail of the line against the best one. */
interface Other {
  readonly model: StopModel;
  readonly place: RailPlace | undefined;
  readonly drier: Float64Array;
  readonly more: Float64Array;
  /** Step up to which the driver has noticed. */
  seen: number;
}

/** @param w speed at which it ends, m/s, < v0 or 0 */
export function stopByPlace(
  model: StopModel,
  rails: Rails,
  s0: number,
  v0: number,
  w: number,
  out: StopTrace,
): void {
  const { potential, inertia, massFactor, a, b, c, reaction, dt } = model;
  const best = rails.best < 0 ? model : rails.places[rails.best].model;
  const others = othersOf(model, rails);
  const end = potential.from + (potential.count - 1) * potential.step;
  const builtUp = reaction + dt * RAMP_STEPS;
  let [t, s, v] = [0, s0, v0];
  out.topSpeed = v0;
  const steps = Math.ceil(reaction / STEP);
  for (let n = 0; n < steps; n++) {
    const h = reaction / steps;
    const pull = a + v * (b + v * c) + massFactor * slopeAt(potential, s + 0.5 * v * h);
    const gain = pull < 0 && v > 0 ? -pull / inertia : 0;
    s += h * (v + 0.5 * gain * h);
    v += gain * h;
  }
  t = reaction;
  out.speedAtAction = v;
  if (v > out.topSpeed) out.topSpeed = v;
  out.beforeFullBrake = Infinity;
  let slowing = 0;
  for (let n = 0; n < MOST_STEPS; n++) {
    times[n] = t;
    places[n] = s;
    if (t >= builtUp - 1e-9 && out.beforeFullBrake === Infinity) out.beforeFullBrake = s - s0;
    const h = t < builtUp - 1e-9 ? Math.min(STEP, builtUp - t) : STEP;
    const middle = Math.max(0, v - 0.5 * h * slowing);
    const at = s + 0.25 * h * (v + middle);
    const brake = brakesAt(best, rails, others, t + 0.5 * h, at, middle, reaction, builtUp, n);
    slowing = (brake + a + middle * (b + middle * c) + massFactor * slopeAt(potential, at)) / inertia;
    if (slowing * h >= v - w) {
      const x = (v - w) / slowing;
      out.distance = s + x * 0.5 * (v + w) - s0;
      out.time = t + x;
      out.beforeFullBrake = Math.min(out.beforeFullBrake, out.distance);
      if (s0 + out.distance > end) out.distance = Infinity;
      return;
    }
    s += h * (v - 0.5 * slowing * h);
    v -= slowing * h;
    t += h;
    if (v > out.topSpeed) out.topSpeed = v;
    if (s > end) break;
  }
  out.beforeFullBrake = Math.min(out.beforeFullBrake, s - s0);
  out.distance = Infinity;
  out.time = Infinity;
}

function othersOf(model: StopModel, rails: Rails): Other[] {
  const others: Other[] = rails.places.flatMap((place, i) =>
    i === rails.best ? [] : [{ model: place.model, place, drier: place.drier, more: place.more, seen: 0 }],
  );
  if (rails.best >= 0)
    others.push({ model, place: undefined, drier: rails.ownDrier, more: rails.ownMore, seen: 0 });
  // The worst rail first: what a driver eases for it he need not ease again.
  return others.sort((p, q) => p.model.scratch.grip[0] - q.model.scratch.grip[0]);
}

/** All brakes of the train, N. @param now step that is being taken */
function brakesAt(
  best: StopModel,
  rails: Rails,
  others: readonly Other[],
  t: number,
  s: number,
  v: number,
  reaction: number,
  builtUp: number,
  now: number,
): number {
  const full = brakeAt(best, t - reaction, v);
  const early = t < builtUp ? full : brakeForce(best.early, v);
  const k = t < builtUp ? Math.floor((RAMP_STEPS * (t - reaction)) / (builtUp - reaction)) : RAMP_STEPS;
  const built = t < builtUp ? (t - reaction) / (builtUp - reaction) : 1;
  let own = full;
  let eased = 0;
  let left = 1;
  for (const other of others) {
    const { model, place, drier } = other;
    const share = place ? shareOn(rails, place, s, v, k) : shareOnOwn(rails, s, v, k);
    const before = t < builtUp ? brakeAt(model, t - reaction, v) : brakeForce(model.early, v);
    // What was eased on the best rail was not so by the wheels that are here: of both the greater loss.
    own -= share * (Math.max(full, early) - before + built * moreThere(other.more, v));
    const noticed = t - model.notice;
    if (noticed < builtUp) continue;
    while (other.seen < now - 1 && times[other.seen + 1] <= noticed) other.seen++;
    const then = placeThen(other.seen, now, noticed);
    const felt = place ? shareOn(rails, place, then, v) : shareOnOwn(rails, then, v);
    const p = Math.min(left, easedBy(felt, rails.felt));
    eased += p * brakeForce(model.force, v) * (1 + (1 - share) * (brakeForce(drier, v) - 1));
    left -= p;
  }
  return left * own + eased;
}

/** Where the head was at a time between two steps. */
function placeThen(i: number, now: number, t: number): number {
  if (i >= now) return places[now];
  const share = (t - times[i]) / (times[i + 1] - times[i]);
  return places[i] + Math.min(1, share) * (places[i + 1] - places[i]);
}
