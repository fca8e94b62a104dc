/**
 * Running under full power: the speed along a climb, and where the train stalls if it does.
 *
 *   d(½·M·v²)/ds = F(v) − R(v) − W′(s)
 *
 * F pull at the rail (N), R rolling resistance (N), W′ pull of grade and curves (N), M mass with the inertia
 * of the wheels (kg). Classical Runge–Kutta in distance.
 */
import { GRAVITY } from '../../base/constants.ts';
import type { Quantity } from '../../base/quantity.ts';
import type { AssumedValues } from '../../things/assumed.ts';
import { type Potential, slopeAt } from '../../things/line/potential.ts';
import { trainPull } from '../../things/traction/pull.ts';
import type { LoadedTrain } from '../../things/train/loaded.ts';
import { resistanceAt, resistanceTerms } from '../../things/train/resistance.ts';

export interface Climb {
  /** m/s at `to`; 0 where it stalls. */
  readonly endSpeed: number;
  readonly leastSpeed: number;
  /** Head chainage where it comes to a stand, m. */
  readonly stallsAt?: number;
}

/**
 * @param position −1: careful (low pull and adhesion, high resistance); 0: likely
 * @returns undefined where an engine's pull at speed is not known
 */
export function climb(
  loaded: LoadedTrain,
  potential: Potential,
  from: number,
  to: number,
  speed: number,
  adhesion: Quantity,
  position: number,
  heights: AssumedValues['engineHeight'],
  step: number = potential.step / 2,
): Climb | undefined {
  const terms = resistanceTerms(loaded.vehicles, -position);
  const weight = loaded.mass * GRAVITY;
  const rate = (s: number, u: number): number => {
    const v = Math.sqrt(2 * Math.max(u, 0));
    const pull = slopeAt(potential, s);
    const force = trainPull(
      loaded,
      { speed: Math.max(v, 1e-3), adhesion, grade: pull / weight, position },
      heights,
    );
    return force === undefined ? Number.NaN : (force - resistanceAt(terms, v) - pull) / loaded.effectiveMass;
  };
  let u = (speed * speed) / 2;
  let least = u;
  const steps = Math.max(1, Math.ceil((to - from) / step));
  const h = (to - from) / steps;
  for (let i = 0; i < steps; i++) {
    const s = from + i * h;
    const k1 = rate(s, u);
    const k2 = rate(s + h / 2, u + (h / 2) * k1);
    const k3 = rate(s + h / 2, u + (h / 2) * k2);
    const k4 = rate(s + h, u + h * k3);
    const after = u + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    if (Number.isNaN(after)) return undefined;
    if (after <= 0) return { endSpeed: 0, leastSpeed: 0, stallsAt: s + (h * u) / (u - after) };
    u = after;
    if (u < least) least = u;
  }
  return { endSpeed: Math.sqrt(2 * u), leastSpeed: Math.sqrt(2 * least) };
}
