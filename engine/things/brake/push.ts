/**
 * Surge brakes in a train: each is worked by what presses on its front coupler, and takes some of that push away from the
 * vehicle ahead.
 *
 *   P_j = P_{j+1} + m_j·a − F_j      from the last vehicle forward      a = Σ F / Σ m
 *
 * P_j push on the front coupler of vehicle j (N; below nothing it is pulled, and so presses less on all ahead of it), m mass (kg),
 * F its retarding force, brakes and rolling resistance (N), a what all of these take off the speed (m/s²): a car that brakes or
 * rolls harder than others presses less. A fall that is the same under the whole train presses no coupler: it speeds up every
 * vehicle alike. Found by repetition. Source: the balance of every vehicle of a rigid train.
 */
import type { Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { SurgeRigging } from '../vehicle/types.ts';
import { surgeForce } from './hand-and-push.ts';

export interface Pushed {
  /** Its vehicle of this train. */
  readonly vehicle: number;
  readonly surge: SurgeRigging;
  /** No push gives more, N; absent: nobody measured it. */
  readonly atMost?: Quantity;
}

const MOST_ROUNDS = 200;
const SETTLED = 1e-6;

/**
 * Retarding force of each pushed gear at the rail, N.
 *
 * @param others rolling resistance and all other brakes by vehicle, N
 * @param most what adhesion lets each gear hold, N
 * @param frictions of each gear's blocks at that speed
 * @param position in the spread of their efficiency
 */
export function settlePush(
  pushed: readonly Pushed[],
  masses: ArrayLike<number>,
  others: ArrayLike<number>,
  most: readonly number[],
  frictions: readonly number[],
  position: number,
): number[] {
  let mass = 0;
  let fixed = 0;
  for (let j = 0; j < masses.length; j++) {
    mass += masses[j];
    fixed += others[j];
  }
  /** From the last vehicle forward at a retardation. */
  const swept = (a: number): number[] => {
    const forces = pushed.map(() => 0);
    let push = 0;
    for (let j = masses.length - 1; j >= 0; j--) {
      push += masses[j] * a - others[j];
      pushed.forEach(({ vehicle, surge, atMost }, i) => {
        if (vehicle !== j) return;
        const { force } = surgeForce(surge, push, frictions[i], pick(surge.efficiency, position));
        forces[i] = Math.min(force, most[i], atMost ? pick(atMost, position) : Infinity);
        push -= forces[i];
      });
    }
    return forces;
  };
  const sum = (forces: readonly number[]): number => forces.reduce((total, f) => total + f, 0);
  let forces = pushed.map(() => 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = sum(forces);
    forces = swept((fixed + before) / mass);
    const after = sum(forces);
    if (Math.abs(after - before) <= SETTLED * (fixed + after)) break;
  }
  return forces;
}
