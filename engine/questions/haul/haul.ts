/**
 * How fast does it go on the worst place in grade and curve?
 *
 *   F(v) = W′(s) + R(v)
 *
 * F pull at the rail (N), W′ pull of grade and curves (N), R rolling resistance (N). For the careful answer resistance
 * is high and adhesion, steam pressure and power are low.
 */
import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import type { Potential } from '../../things/line/potential.ts';
import { trainPull } from '../../things/traction/pull.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';
import { resistanceAt, resistanceTerms } from '../../things/train/resistance.ts';

/** Where the line pulls back hardest, as an index of the potential's nodes up to `count`. */
export function hardestNode(potential: Potential, length: number): number {
  let worst = 0;
  const count = Math.min(potential.count, Math.floor((length - potential.from) / potential.step) + 1);
  for (let j = 1; j < count; j++) if (potential.slope[j] > potential.slope[worst]) worst = j;
  return worst;
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
