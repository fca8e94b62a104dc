/**
 * Coasting: how far a train rolls with neither power nor brake.
 *
 *   d(½·M·v²)/ds = −(R(v) + W′(s))
 *
 * M mass with the inertia of the wheels (kg), R rolling resistance (N), W potential of grade and curves (J).
 * Marched in steps of distance; the potential enters by its exact differences, the resistance by its mean.
 */

import { firstZero } from '../base/roots.ts';
import { type Potential, potentialAt } from '../things/line/potential.ts';
import { type ResistanceTerms, resistanceAt } from '../things/train/resistance.ts';

export interface Coast {
  /** m; Infinity: still rolling at the end of the potential's grid. */
  readonly distance: number;
  /** m/s */
  readonly topSpeed: number;
  /** Speed at the end of the grid where it still rolls, m/s. */
  readonly endSpeed: number;
}

/** @param v0 m/s, ≥ 0 */
export function coast(
  potential: Potential,
  inertia: number,
  terms: ResistanceTerms,
  s0: number,
  v0: number,
  step: number = potential.step,
): Coast {
  const end = potential.from + (potential.count - 1) * potential.step;
  let s = s0;
  let u = (v0 * v0) / 2;
  let top = u;
  let level = potentialAt(potential, s);
  const drag = (energy: number): number => resistanceAt(terms, Math.sqrt(2 * Math.max(energy, 0)));
  const steps = Math.ceil((end - s0) / step - 1e-9);
  for (let i = 0; i < steps; i++) {
    const h = i === steps - 1 ? end - s : step;
    const next = potentialAt(potential, s + h);
    const fall = (next - level) / inertia;
    const first = u - fall - (drag(u) * h) / inertia;
    const after = u - fall - ((drag(u) + drag(first)) * h) / (2 * inertia);
    if (after <= 0) {
      const left = (x: number): number =>
        u - (potentialAt(potential, s + x) - level) / inertia - (drag(u / 2) * x) / inertia;
      return { distance: s + firstZero(left, h) - s0, topSpeed: Math.sqrt(2 * top), endSpeed: 0 };
    }
    u = after;
    s += h;
    level = next;
    if (u > top) top = u;
  }
  return { distance: Infinity, topSpeed: Math.sqrt(2 * top), endSpeed: Math.sqrt(2 * u) };
}
