/**
 * What surge brakes give in a train that brakes on level track (`push.ts`): a figure to show, and to share among axles by; stops
 * settle it anew. What was measured with a coupler pushed in wholly is the most that its push gives.
 */

import { between, type Quantity } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { AssumedValues } from '../assumed.ts';
import type { LoadedTrain } from '../train/loaded.ts';
import { resistanceTerms } from '../train/resistance.ts';
import type { BrakeGear } from '../vehicle/types.ts';
import { frictionAt, gearForce } from './force.ts';
import { isPushed } from './kinds/index.ts';
import { type Pushed, settlePush } from './push.ts';
import { gearStates } from './system.ts';

export interface PushedBrake {
  readonly vehicle: number;
  readonly gear: BrakeGear;
  /** Retarding force at the rail, N. */
  readonly force: Quantity;
}

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
    const others = loaded.vehicles.map((v) => resistanceTerms([v], position).a);
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
  states: readonly { readonly vehicle: number; readonly gear: BrakeGear }[],
  others: readonly number[],
  assumed: AssumedValues,
  position: -1 | 0 | 1,
): number[] {
  const pushed = states.flatMap(({ vehicle, gear: { surge, force } }): Pushed[] =>
    surge ? [{ vehicle, surge, ...(force ? { atMost: force } : {}) }] : [],
  );
  const frictions = pushed.map(({ surge: { block, blockFriction } }) =>
    blockFriction ? pick(blockFriction, position) : frictionAt(assumed.blockFriction[block], 0, position),
  );
  const masses = loaded.vehicles.map((v) => v.mass);
  const most = pushed.map(() => Infinity);
  return settlePush(pushed, masses, others, most, frictions, position);
}
