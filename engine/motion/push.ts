/**
 * Surge brakes settled inside a stop, with what the other brakes do on today's rail, sliding ones too (`things/brake/push.ts`).
 * Settled once, at a fair running speed: slower, the others brake harder and the push grows, so a stop is not shorter.
 */
import type { BrakedGroup } from '../things/brake/force.ts';
import type { Pushed } from '../things/brake/push.ts';
import type { BrakeGear } from '../things/vehicle/types.ts';

export interface PushedGroup extends Pushed {
  /** Its groups, and the share of the force that each takes. */
  readonly groups: readonly { readonly index: number; readonly share: number }[];
}

/** Node of the speed tables at which pushes are settled (6 mph). */
export const PUSHED_AT = 6;

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
