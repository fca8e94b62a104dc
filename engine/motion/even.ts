/**
 * The sum of a stop on an even grade that is the stop told along the line: its numbers are the model's own, but for one.
 *
 *   r = R/(m·g) at v/√2     γ = M/m − 1     i = rise of the stop ÷ its length     td + tb/2 = ∫(1 − r)dt     tb²/12 = its spread
 *   a: that of an even brake whose stop there is as long
 *
 * R resistance (N) at the middle of the train's energy, m its mass, M with the inertia of the wheels (kg), r share of full
 * brake by time. One brake gives its own dead time td and build-up tb; several together those of one ramp that takes as long.
 * Curves are in the rise. Brakes change with speed, grade and rail with the place: a is their mean over this stop, G/m
 * (G full brake at v/√2, N) but for some per cent, fewer the nearer brake and fall are to balance, for there a little brake is a
 * long way. A bad spot takes from it what it takes from the brakes.
 */

import { GRAVITY } from '../base/constants.ts';
import type { SumRef } from '../base/sum.ts';
import { potentialAt } from '../things/line/potential.ts';
import { brakeForce, channelFactor, type StopModel } from './model.ts';
import { stopDistance, telling } from './stop.ts';
import { RAMP_STEPS } from './stop-inputs.ts';
import { stoppingDistance } from './stopping-sum.ts';

/**
 * Undefined without a brake, or where no even brake stops like that.
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
  const v = speed * Math.SQRT1_2;
  const resistance = (a + v * (b + v * c)) / heavy / GRAVITY;
  const grade =
    (ends ? rise(model, at, distance) / (distance * mass * GRAVITY) : fall) + tilt / heavy / GRAVITY;
  const given = {
    speed,
    deceleration: brakeForce(model.force, v) / heavy,
    reaction,
    ...oneRamp(model, v),
    grade,
    resistance,
    'rotating-share': inertia / heavy - 1,
  };
  const deceleration = ends ? evenBrake(given, distance) : given.deceleration;
  if (deceleration === undefined || deceleration <= 0) return undefined;
  return { id: 'stopping-distance', inputs: { ...given, deceleration } };
}

type Given = SumRef['inputs'] & { readonly deceleration: number };

const evenDistance = (given: Given): number => {
  const found = stoppingDistance.compute(given);
  return Array.isArray(found) ? found[0] : Infinity;
};

/** An even brake is sought up to so many times the train's: rail better than the day's own holds more. */
const MOST_BETTER = 10;
const HALVINGS = 60;

/** Deceleration of an even brake whose stop is as long; undefined: none is. */
function evenBrake(given: Given, distance: number): number | undefined {
  const stops = (deceleration: number): number => evenDistance({ ...given, deceleration });
  let [low, high] = [0, given.deceleration * MOST_BETTER];
  if (!(stops(high) <= distance && stops(low) >= distance)) return undefined;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (stops(middle) > distance) low = middle;
    else high = middle;
  }
  return high;
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
