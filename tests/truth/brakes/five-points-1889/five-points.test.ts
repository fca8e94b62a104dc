/** The first three points of the Act of 1889, asked of every kind of brake. */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../../engine/base/quantity.ts';
import { openOuting } from '../../../../engine/outing/open.ts';
import type { Outing } from '../../../../engine/outing/types.ts';
import { wholeLeft } from '../../../../engine/questions/part/brakes-left.ts';
import type { BrakeKind } from '../../../../engine/things/brake/kinds/index.ts';
import { gearStates } from '../../../../engine/things/brake/system.ts';
import type { BrakeGear } from '../../../../engine/things/vehicle/types.ts';
import { usualWorker } from '../../../../engine/things/vehicle/worked-by.ts';
import { printedIn } from '../../../support/measured.ts';
import { randomOuting } from '../../../support/random-outings.ts';

/** An engine with its own brake, its driver, and three cars with one kind of brake. */
function trainWith(kind: BrakeKind | 'none', onSupplyLoss?: 'applies' | 'lost'): Outing {
  const base = randomOuting(11, 3);
  const gear = (of: BrakeKind, role: 'engine' | 'car'): BrakeGear => ({
    id: of,
    name: of,
    kind: of,
    on: ['a', 'b'],
    force: exact(300),
    workedBy: usualWorker(of, role, false),
    parking: false,
    ...(onSupplyLoss === undefined ? {} : { onSupplyLoss }),
  });
  const vehicles = base.train.vehicles.map((v) => {
    const { supplies: _supplies, throughPipe: _pipe, ...bare } = v;
    if (v.role === 'engine')
      return {
        ...bare,
        brakes: [gear('engine-only', 'engine')],
        ...(kind === 'none' ? {} : { supplies: [kind] }),
      };
    return { ...bare, brakes: kind === 'none' ? [] : [gear(kind, 'car')] };
  });
  return { ...base, train: { ...base.train, vehicles } };
}

const act = printedIn(import.meta.url, 'A');
const yes = true;
const no = false;

describe('the Act of 1889 asks', () => {
  it.each([
    ['none', undefined, no, no],
    ['straight-air', undefined, yes, no],
    ['automatic-air', undefined, yes, yes],
    ['simple-vacuum', undefined, yes, no],
    ['automatic-vacuum', undefined, yes, yes],
    ['electric', 'applies', yes, yes],
    ['electric', 'lost', yes, no],
    ['electric', undefined, yes, no],
    ['mechanical', undefined, no, no],
    ['surge', undefined, yes, no],
  ] as const)('of %s (%s): on every car by the driver %s, by itself %s', (kind, wired, driver, itself) => {
    const outing = trainWith(kind, wired);
    const cars = [1, 2, 3];
    const answering = new Set(gearStates(outing).flatMap((s) => (s.answers ? [s.vehicle] : [])));
    const told = (is: boolean): number => Number(is);
    act.figure(`${kind}, the driver`, told(cars.every((v) => answering.has(v))), told(driver), 0);
    // The engine's own brake answers its driver in every case.
    expect(answering.has(0)).toBe(true);
    for (const gap of [0, 1, 2]) {
      const { groups } = wholeLeft(openOuting(outing), gap, true);
      const alone = new Set(
        groups.flatMap((g) => (outing.train.vehicles[g.vehicle].brakes.includes(g.gear) ? [g.vehicle] : [])),
      );
      // Behind the break by itself; ahead of it a cable may still be the driver's.
      act.figure(
        `${kind}, itself`,
        told(cars.filter((v) => v > gap).every((v) => alone.has(v))),
        told(itself),
        0,
      );
      const left = new Set(groups.map((g) => g.vehicle));
      if (itself) expect(cars.every((v) => left.has(v))).toBe(true);
      if (!itself) expect(cars.some((v) => alone.has(v))).toBe(false);
    }
  });
});
