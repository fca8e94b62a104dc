/** Brake ratio of each group, empty and loaded, and the order in which the wheels slide as the rail worsens. */

import type { Quantity } from '../../base/quantity.ts';
import type { AssumedValues } from '../assumed.ts';
import { groupLoads, type LoadedTrain } from '../train/loaded.ts';
import { tareAlong } from '../vehicle/tare.ts';
import type { BrakeGear } from '../vehicle/types.ts';
import { frictionAt, gearForce } from './force.ts';

export interface GroupRatio {
  readonly vehicle: number;
  readonly group: number;
  /** Retarding force at walking pace, N. */
  readonly force: Quantity;
  /** Force ÷ weight on the group: at and below this adhesion it slides. Loaded as today, and empty. */
  readonly loaded: number;
  readonly empty: number;
}

/**
 * Ratio of every braked group, all gears of the group that a test admits together; the first to slide (the
 * greatest ratio as loaded) first.
 */
export function brakeRatios(
  loaded: LoadedTrain,
  assumed: AssumedValues,
  air: { readonly pressure: number; readonly seaLevel: number },
  counts: (gear: BrakeGear, vehicle: number) => boolean,
): GroupRatio[] {
  const ratios = loaded.vehicles.flatMap(({ vehicle, groupLoads: loads }, index) => {
    const empty = groupLoads(vehicle, vehicle.tare.value, tareAlong(vehicle), []);
    const gears = vehicle.brakes.filter((b) => counts(b, index));
    return vehicle.groups.flatMap((group, g): GroupRatio[] => {
      const forces = gears.flatMap((gear) => {
        if (!gear.on.includes(group.id)) return [];
        const axles = vehicle.groups.reduce((sum, o) => sum + (gear.on.includes(o.id) ? o.axles : 0), 0);
        const force = gearForce(gear, assumed, air.pressure, air.seaLevel);
        if (!force) return [];
        const at = (p: -1 | 0 | 1, block: number): number =>
          (block * (force.friction ? frictionAt(force.friction, 0, p) : 1) * group.axles) / axles;
        return [
          { low: at(-1, force.block.low), value: at(0, force.block.value), high: at(1, force.block.high) },
        ];
      });
      if (forces.length === 0) return [];
      const total = (pick: 'low' | 'value' | 'high'): number => forces.reduce((sum, f) => sum + f[pick], 0);
      const force: Quantity = {
        value: total('value'),
        low: total('low'),
        high: total('high'),
        how: 'assumed',
      };
      return [
        {
          vehicle: index,
          group: g,
          force,
          loaded: force.value / loads[g],
          empty: force.value / empty[g],
        },
      ];
    });
  });
  return ratios.sort((a, b) => b.loaded - a.loaded || a.vehicle - b.vehicle || a.group - b.group);
}
