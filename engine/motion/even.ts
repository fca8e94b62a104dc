/**
 * The sum of a stop on an even grade that is nearest to a stop along the line: its numbers are the model's own.
 *
 *   a = G/m, r = R/(m·g) at v/√2     γ = M/m − 1     i = rise of the stop ÷ its length
 *   td + tb/2 = ∫(1 − r)dt     tb²/12 = its spread
 *
 * G full brake and R resistance (N) at the middle of the train's energy, m its mass, M with the inertia of the
 * wheels (kg), r share of full brake by time. One brake gives its own dead time td and build-up tb; several
 * together those of one ramp that takes as long. Curves are in the rise.
 */

import { GRAVITY } from '../base/constants.ts';
import type { SumRef } from '../base/sum.ts';
import { potentialAt } from '../things/line/potential.ts';
import { brakeForce, channelFactor, type StopModel } from './model.ts';
import { stopDistance, telling } from './stop.ts';
import { RAMP_STEPS } from './stop-inputs.ts';
import { stoppingDistance } from './stopping-sum.ts';

/** Share of the brake that must be left over by the fall for an even grade to say anything. */
const SLIM = 0.12;

/**
 * Undefined without a brake, and where a brake just holds the fall: such a stop hangs on every metre of ground.
 *
 * @param mass of the train, likely, kg
 * @param fall grade for a stop that does not end, rise over run
 */
export function evenStop(
  cautious: StopModel,
  mass: number,
  at: number,
  speed: number,
  fall = 0,
): SumRef | undefined {
  const model = telling(cautious, at, speed);
  const { reaction, inertia, massFactor, b, c, tilt } = model;
  const a = model.a - tilt;
  const heavy = mass * massFactor;
  const distance = stopDistance(model, at, speed);
  const ends = distance < Infinity;
  const own = onOneRail(model, at, speed, distance);
  const v = speed * Math.SQRT1_2;
  const resistance = (a + v * (b + v * c)) / heavy / GRAVITY;
  const grade = (ends ? rise(model, at, own) / (own * mass * GRAVITY) : fall) + tilt / heavy / GRAVITY;
  const given = {
    speed,
    deceleration: brakeForce(model.force, v) / heavy,
    reaction,
    ...oneRamp(model, v),
    grade,
    resistance,
    'rotating-share': inertia / heavy - 1,
  };
  // A bad spot or another rail takes work from the brakes: the even stop has it spread over the whole way.
  const deceleration = distance !== own ? weakerBy(given, distance / own) : given.deceleration;
  if (deceleration === undefined || deceleration <= 0) return undefined;
  if (ends && deceleration + GRAVITY * (grade + resistance) < SLIM * deceleration) return undefined;
  return { id: 'stopping-distance', inputs: { ...given, deceleration } };
}

type Given = SumRef['inputs'] & { readonly deceleration: number };

const evenDistance = (given: Given): number => {
  const found = stoppingDistance.compute(given);
  return Array.isArray(found) ? found[0] : Infinity;
};

/** A better rail than the day's own gives a brake no more than so many times its force. */
const MOST_BETTER = 10;

/** Deceleration with which the even stop is so many times as long; undefined where it does not end at all. */
function weakerBy(given: Given, times: number): number | undefined {
  const target = evenDistance(given) * times;
  if (target === Infinity) return undefined;
  let [low, high] = [0, given.deceleration * (times < 1 ? MOST_BETTER : 1)];
  for (let i = 0; i < 50; i++) {
    const deceleration = (low + high) / 2;
    if (evenDistance({ ...given, deceleration }) > target) low = deceleration;
    else high = deceleration;
  }
  return high;
}

/** The stop without its bad spot, all on the day's own rail, m. */
function onOneRail(model: StopModel, at: number, speed: number, distance: number): number {
  const { spot, rails } = model;
  if ((spot === 0 && !rails) || distance === Infinity) return distance;
  model.spot = 0;
  model.rails = undefined;
  const own = stopDistance(model, at, speed);
  model.spot = spot;
  model.rails = rails;
  return own;
}

const rise = ({ potential }: StopModel, at: number, distance: number): number =>
  potentialAt(potential, at + distance) - potentialAt(potential, at);

/** Dead time and build-up of the one straight ramp with the same mean and spread as all brakes together. */
function oneRamp(model: StopModel, v: number): { 'dead-time': number; 'build-up': number } {
  const { channels, factor, mean, lead, dt } = model;
  const full = brakeForce(model.force, v);
  if (full <= 0) return { 'dead-time': 0, 'build-up': 0 };
  let lost = 0;
  let square = 0;
  for (let k = 0; k < RAMP_STEPS; k++) {
    let once = 0;
    let twice = 0;
    for (let i = 0; i < channels; i++) {
      const f = (i === 0 ? 1 : channelFactor(factor, i, v)) / full;
      once += f * mean[i * RAMP_STEPS + k];
      twice += f * lead[i * RAMP_STEPS + k];
    }
    lost += dt * (1 - once);
    square += dt * dt * (2 * k + 1 - 2 * (k * once + once - twice));
  }
  // Until sliding wheels are eased they hold less, or more, than afterwards.
  const less = model.notice * (1 - brakeForce(model.early, v) / full);
  square += less * (2 * dt * RAMP_STEPS + model.notice);
  lost = Math.max(0, lost + less);
  const build = Math.min(2 * lost, Math.sqrt(12 * Math.max(0, square - lost * lost)));
  return { 'dead-time': lost - build / 2, 'build-up': build };
}
