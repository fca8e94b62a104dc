/**
 * Surge brakes in a train that brakes on level track: each is worked by what pushes on its front coupler, and
 * each takes some of that push away from the vehicle ahead.
 *
 *   P_j = max(0, P_{j+1} + m_j·a − F_j)      from the last vehicle forward      a = Σ F / Σ m
 *
 * P_j push on the front coupler of vehicle j (N), m mass (kg), F its retarding force (N), a deceleration of
 * the train (m/s²), found by repetition. A fall adds to the push, so the level figure is the weaker one. What was
 * measured with a coupler pushed in wholly is the most that its push gives.
 */

import { between, type Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { AssumedValues } from '../assumed.ts';
import type { LoadedTrain } from '../train/loaded.ts';
import type { BrakeGear } from '../vehicle/types.ts';
import { frictionAt, gearForce } from './force.ts';
import { surgeForce } from './hand-and-push.ts';
import { isPushed } from './kinds/index.ts';
import { gearStates } from './system.ts';

export interface PushedBrake {
  readonly vehicle: number;
  readonly gear: BrakeGear;
  /** Retarding force at the rail, N. */
  readonly force: Quantity;
}

const ROUNDS = 200;

/** Retarding force of every surge brake that answers and whose levers are known. */
export function pushedBrakes(
  loaded: LoadedTrain,
  assumed: AssumedValues,
  air: { readonly pressure: number; readonly seaLevel: number },
): PushedBrake[] {
  const states = gearStates(loaded).filter((s) => s.answers);
  const pushed = states.filter((s) => isPushed(s.gear.kind) && s.gear.surge);
  if (pushed.length === 0) return [];
  const at = (position: -1 | 0 | 1): number[] => {
    const others = loaded.vehicles.map(() => 0);
    for (const { vehicle, gear } of states) {
      if (pushed.some((p) => p.gear === gear && p.vehicle === vehicle)) continue;
      const force = gearForce(gear, assumed, air.pressure, air.seaLevel);
      if (!force) continue;
      const friction = force.friction ? frictionAt(force.friction, 0, position) : 1;
      others[vehicle] += pick(force.block, position) * friction;
    }
    return settle(loaded, pushed, others, assumed, position);
  };
  const [low, value, high] = [at(-1), at(0), at(1)];
  return pushed.map(({ vehicle, gear }, i) => ({
    vehicle,
    gear,
    force: between(low[i], value[i], high[i], 'assumed', 'push of the coupler on level track'),
  }));
}

function settle(
  loaded: LoadedTrain,
  pushed: readonly { readonly vehicle: number; readonly gear: BrakeGear }[],
  others: readonly number[],
  assumed: AssumedValues,
  position: -1 | 0 | 1,
): number[] {
  const forces = pushed.map(() => 0);
  const fixed = others.reduce((sum, f) => sum + f, 0);
  for (let round = 0; round < ROUNDS; round++) {
    const a = (fixed + forces.reduce((sum, f) => sum + f, 0)) / loaded.mass;
    let push = 0;
    for (let j = loaded.vehicles.length - 1; j >= 0; j--) {
      push += loaded.vehicles[j].mass * a - others[j];
      pushed.forEach(({ vehicle, gear }, i) => {
        if (vehicle !== j || !gear.surge) return;
        const { surge } = gear;
        const friction = surge.blockFriction
          ? pick(surge.blockFriction, position)
          : frictionAt(assumed.blockFriction[surge.block], 0, position);
        const found = surgeForce(surge, push, friction, pick(surge.efficiency, position));
        forces[i] = Math.min(found.force, gear.force ? pick(gear.force, position) : Infinity);
        push -= forces[i];
      });
      push = Math.max(0, push);
    }
  }
  return forces;
}
