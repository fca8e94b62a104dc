/**
 * Permitted speed along the line: the greatest from which the cautious stop fits into what is available,
 * and never above the ceilings of host, vehicles, curves and balance.
 *
 * Solved point by point with a secant that starts from the neighbour's answer, so that most points cost
 * little more than one stop.
 */
import type { StopModel } from '../../motion/model.ts';
import { stopDistance } from '../../motion/stop.ts';

/** Fit of the stop into what is available: from full to this share below it, always inside. */
const FIT = 0.004;
/** Seconds of d/v beyond which a stop is so long that its distance hardly tells the speed. */
const LONG_STOP = 30;
const SPEED_FIT = 0.01;
/** A stop grows between linearly and squarely with speed: steps go as if by the power 1.6. */
const POWER = 1 / 1.6;
const MOST_TRIES = 60;
/** Speed of the stop that the model's trace is left with by the search. */
let tried = Number.NaN;
/** After these, halving. */
const STEPS_BY_POWER = 8;

/**
 * Greatest speed ≤ cap whose stop from s fits into `available`, m/s; 0 where even a creeping train does
 * not stop in time. The result's stop never exceeds `available`.
 *
 * @param guess speed to start from, for example the neighbour's answer
 */
export function speedThatStops(
  model: StopModel,
  s: number,
  available: number,
  cap: number,
  guess: number,
): number {
  tried = Number.NaN;
  if (cap <= 0 || available <= 0) return 0;
  let low = 0;
  let high = cap;
  let v = guess > 0 && guess < cap ? guess : cap;
  let capTried = v === cap;
  for (let i = 0; i < MOST_TRIES; i++) {
    const d = stopDistance(model, s, v);
    tried = v;
    if (d <= available) {
      if (v === cap || high - v < 1e-6 * cap) return v;
      if (d >= available * (1 - FIT) && (d < LONG_STOP * v || high - v < SPEED_FIT * v)) return v;
      low = v;
    } else high = v;
    if (high - low < 1e-7 * cap) return low;
    const step = d < Infinity ? v * ((available * (1 - FIT / 2)) / d) ** POWER : Infinity;
    if (step >= cap && !capTried) {
      capTried = true;
      v = cap;
    } else v = i < STEPS_BY_POWER && step > low && step < high ? step : (low + high) / 2;
  }
  return low;
}

/**
 * Permitted speeds on the grid.
 *
 * @param ceiling m/s per grid point, from all reasons but stopping
 * @param settled called at each point with its speed, the model's trace being of the stop from it
 * @returns speeds (m/s) and, per point, whether stopping set it
 */
export function limitsByStopping(
  model: StopModel,
  from: number,
  step: number,
  ceiling: Float64Array,
  available: Float64Array,
  settled: (j: number) => void = () => {},
): { speed: Float64Array; byStopping: Uint8Array } {
  const count = ceiling.length;
  const speed = new Float64Array(count);
  const byStopping = new Uint8Array(count);
  let guess = 0;
  let room = 0;
  for (let j = 0; j < count; j++) {
    // From one point to the next the stop keeps its shape: the guess follows what is available.
    if (guess > 0 && available[j] < Infinity) guess *= ((available[j] * (1 - FIT / 2)) / room) ** POWER;
    const v = speedThatStops(model, from + j * step, available[j], ceiling[j], guess);
    speed[j] = v;
    if (v < ceiling[j]) {
      byStopping[j] = 1;
      guess = v;
      // The stop that was last computed, mostly the one accepted.
      room = model.trace.distance < Infinity ? model.trace.distance : available[j];
    } else guess = 0;
    if (tried !== v) stopDistance(model, from + j * step, v);
    settled(j);
  }
  return { speed, byStopping };
}
