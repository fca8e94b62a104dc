/**
 * Surge brakes settled inside a stop: each is worked by the push on its front coupler, with what the other brakes do on
 * today's rail, sliding ones too.
 *
 *   P_j = max(0, P_{j+1} + m_j·a − F_j)      from the last vehicle forward      a = Σ F / Σ m
 *
 * P_j push on the front coupler of vehicle j (N), m mass (kg), F its retarding force (N), a what the brakes take off the
 * speed (m/s²). A fall that is the same under the whole train presses no coupler: it speeds up every vehicle alike.
 * Settled once, at a fair running speed: slower, the others brake harder and the push grows, so a stop is not shorter.
 */
import type { Quantity } from '../base/quantity.ts';
import { pick } from '../base/spread.ts';
import type { BrakedGroup } from '../things/brake/force.ts';
import { surgeForce } from '../things/brake/hand-and-push.ts';
import type { BrakeGear, SurgeRigging } from '../things/vehicle/types.ts';

export interface PushedGroup {
  /** Its vehicle of this train. */
  readonly vehicle: number;
  readonly surge: SurgeRigging;
  /** No push gives more, N; absent: nobody measured it. */
  readonly atMost?: Quantity;
  /** Its groups, and the share of the force that each takes. */
  readonly groups: readonly { readonly index: number; readonly share: number }[];
}

/** Node of the speed tables at which pushes are settled (6 mph). */
export const PUSHED_AT = 6;
const MOST_ROUNDS = 60;
const SETTLED = 1e-4;

/** @param first index of this train's first vehicle in the whole train */
export function pushedGroups(groups: readonly BrakedGroup[], first: number): PushedGroup[] {
  const byGear = new Map<BrakeGear, { vehicle: number; index: number; force: number }[]>();
  groups.forEach(({ gear, vehicle, block }, index) => {
    if (!gear.pushed) return;
    const own = byGear.get(gear) ?? [];
    byGear.set(gear, own);
    own.push({ vehicle, index, force: block.value });
  });
  return [...byGear].flatMap(([{ surge, pushedMost: atMost }, own]) => {
    if (!surge) return [];
    const total = own.reduce((sum, o) => sum + o.force, 0);
    const groupsOf = own.map(({ index, force }) => ({
      index,
      share: total > 0 ? force / total : 1 / own.length,
    }));
    return [{ vehicle: own[0].vehicle - first, surge, groups: groupsOf, ...(atMost ? { atMost } : {}) }];
  });
}

/**
 * Force of each pushed gear's blocks, N.
 *
 * @param others force of all other brakes by vehicle, N
 * @param most what adhesion lets each gear hold, N
 * @param frictions of each gear's blocks at that speed
 * @param position in the spread of their efficiency
 */
export function settlePush(
  pushed: readonly PushedGroup[],
  masses: Float64Array,
  others: Float64Array,
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
  let forces = pushed.map(() => 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const sum = forces.reduce((total, f) => total + f, 0);
    const next = swept(pushed, masses, others, most, frictions, position, (fixed + sum) / mass);
    const after = next.reduce((total, f) => total + f, 0);
    forces = next;
    if (Math.abs(after - sum) <= SETTLED * (fixed + after)) break;
  }
  return forces.map((f, i) => (frictions[i] > 0 ? f / frictions[i] : 0));
}

/** One sweep from the last vehicle forward at a retardation. */
function swept(
  pushed: readonly PushedGroup[],
  masses: Float64Array,
  others: Float64Array,
  most: readonly number[],
  frictions: readonly number[],
  position: number,
  a: number,
): number[] {
  const forces = pushed.map(() => 0);
  let push = 0;
  for (let j = masses.length - 1; j >= 0; j--) {
    push += masses[j] * a - others[j];
    for (let i = 0; i < pushed.length; i++) {
      const { vehicle, surge, atMost } = pushed[i];
      if (vehicle !== j) continue;
      const found = surgeForce(surge, push, frictions[i], pick(surge.efficiency, position));
      forces[i] = Math.min(found.force, most[i], atMost ? pick(atMost, position) : Infinity);
      push -= forces[i];
    }
    push = Math.max(0, push);
  }
  return forces;
}
