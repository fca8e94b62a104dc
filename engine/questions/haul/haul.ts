/**
 * Can it start, and how fast does it go, on the worst place in grade and curve?
 *
 *   start   F(0) ≥ W′(s) + σ·Σ m·g·r        run   F(v) = W′(s) + R(v)
 *
 * F pull at the rail (N), W′ pull of grade and curves (N), r rolling resistance, σ starting ÷ rolling.
 * For the careful answer resistance is high and adhesion, steam pressure and power are low.
 */

import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { AssumedValues } from '../../things/assumed.ts';
import type { Potential } from '../../things/line/potential.ts';
import { trainPull } from '../../things/traction/pull.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';
import { resistanceAt, resistanceTerms } from '../../things/train/resistance.ts';

export interface StartCheck {
  /** Head chainage of the hardest place, m. */
  readonly at: number;
  /** N; undefined: an engine's pull is not known. */
  readonly pull: number | undefined;
  readonly need: number;
}

/** Where the line pulls back hardest, as an index of the potential's nodes up to `count`. */
export function hardestNode(potential: Potential, length: number): number {
  let worst = 0;
  const count = Math.min(potential.count, Math.floor((length - potential.from) / potential.step) + 1);
  for (let j = 1; j < count; j++) if (potential.slope[j] > potential.slope[worst]) worst = j;
  return worst;
}

/**
 * @param position −1: careful (low adhesion and steam, high resistance), 0: likely
 */
export function startCheck(
  loaded: LoadedTrain,
  potential: Potential,
  length: number,
  adhesion: Quantity,
  assumed: AssumedValues,
  position: number,
): StartCheck {
  const node = hardestNode(potential, length);
  const line = potential.slope[node];
  const rolling = startingResistance(loaded, assumed, -position);
  const grade = line / (loaded.mass * GRAVITY);
  return {
    at: potential.from + node * potential.step,
    pull: trainPull(loaded, 0, adhesion, grade, position),
    need: line + rolling,
  };
}

/** Resistance of the standing train, N: each vehicle's measured one, or its rolling one times the assumed factor. */
function startingResistance(loaded: LoadedTrain, assumed: AssumedValues, position: number): number {
  return loaded.vehicles.reduce((sum, { vehicle, mass }) => {
    const { rolling, starting } = vehicle.resistance;
    const rate = starting
      ? pick(starting, position)
      : pick(rolling, position) * pick(assumed.startingFactor, position);
    return sum + mass * GRAVITY * rate;
  }, 0);
}

/** Greatest speed kept up at a node, m/s; 0: stalls; undefined: pull at speed not known. Up to 20 m/s. */
export function balancingSpeed(
  loaded: LoadedTrain,
  linePull: number,
  adhesion: Quantity,
  position: number,
): number | undefined {
  const terms = resistanceTerms(loaded.vehicles, -position);
  const grade = linePull / (loaded.mass * GRAVITY);
  const spare = (v: number): number | undefined => {
    const pull = trainPull(loaded, v, adhesion, grade, position);
    return pull === undefined ? undefined : pull - linePull - resistanceAt(terms, v);
  };
  const HIGH = 20;
  const [slow, fast] = [spare(0.05), spare(HIGH)];
  if (slow === undefined || fast === undefined) return undefined;
  if (slow <= 0) return 0;
  if (fast >= 0) return HIGH;
  let [low, high] = [0.05, HIGH];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if ((spare(middle) ?? -1) > 0) low = middle;
    else high = middle;
  }
  return low;
}
