/** Coupler heights from springs and seats: the engine beside frames that are let down on their springs until they rest. */
import { expect, it } from 'vitest';
import { exact } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Rider } from '../../engine/things/train/types.ts';
import type { AxleGroup, Vehicle } from '../../engine/things/vehicle/types.ts';
import { crested, knuckle } from '../support/crested.ts';
import { rider } from '../support/rules.ts';
import { runs } from '../support/tier.ts';
import { between } from '../support/wheeled.ts';
import { heldOn } from './against/coupler-heights.ts';
import { chance } from './chance.ts';
import { type Loading, leastHeld } from './coupler-heights.ts';

/** Steps of the frame that is let down, twice, and points of two faces, m. */
const WITHIN = 0.0001;

const level = [0, 90].map((at) => ({ at, height: 0 }));
const shapes = ['trucks', 'two axles', 'one group', 'between trucks'] as const;

function groupsOf(shape: (typeof shapes)[number], length: number, next: () => number): AxleGroup[] {
  const group = (at: number, axles: number, wheelBase: number, driven = false): AxleGroup => ({
    ...{ id: `${at}`, name: `${at}`, at, axles, wheelBase, driven },
  });
  const over = length * (0.12 + 0.15 * next());
  const [front, rear] = [over, length - over * (0.7 + 0.5 * next())];
  if (shape === 'trucks') return [group(front, 2, 0.2), group(rear, 2, 0.2)];
  if (shape === 'two axles') return [group(front, 1, 0), group(rear, 1, 0)];
  const middle = (front + rear) / 2;
  if (shape === 'one group') return [group(middle, next() < 0.5 ? 2 : 3, rear - front)];
  return [
    group(front, 2, 0.2),
    group(middle, 2 + Math.floor(3 * next()), (rear - front) / 3, true),
    group(rear, 1, 0),
  ];
}

function randomCase(seed: number): Outing {
  // Neighbouring seeds begin alike.
  const next = chance(seed * 1_000_003);
  const from = (low: number, high: number): number => low + (high - low) * next();
  const two = [0, 1].map(() => ({ length: from(1.2, 3), overhang: 0.3 }));
  const base = crested(level, two);
  const riders: Rider[] = [];
  const vehicles = base.train.vehicles.map((v, i): Vehicle => {
    const length = two[i].length;
    const k = 15_000 * 15 ** next();
    const seats = Array.from({ length: 1 + Math.floor(4 * next()) }, (_, n) => ({
      ...{ id: `${n}`, name: `${n}`, at: from(0, length), across: 0, height: 0.3 },
      ...({ facing: 'forward', driver: false } as const),
      ...(next() < 0.5 ? { most: from(60, 120) } : {}),
    }));
    for (const seat of seats)
      if (next() < 0.7)
        riders.push({
          ...rider(`${i}-${seat.id}`, seat.id, { mass: exact(from(20, 110)) }),
          vehicle: v.id,
          ...(next() < 0.2 ? { duty: 'driver' } : {}),
        });
    const coupler = () => knuckle(from(0.105, 0.115), { face: from(0.02, 0.04) });
    return {
      ...v,
      groups: groupsOf(shapes[Math.floor(shapes.length * next())], length, next),
      seats,
      loads:
        next() < 0.3
          ? [{ id: 'l', name: 'load', mass: exact(from(5, 60)), at: from(0, length) } as never]
          : [],
      suspension: { equalised: true, wheelStiffness: between(k, k * from(1, 1.4)) },
      front: coupler(),
      rear: coupler(),
    };
  });
  return { ...base, train: { ...base.train, vehicles }, riders };
}

const loadings: readonly Loading[] = ['empty', 'seated', 'full'];
const asks = {
  seated: [['seated', 'seated']],
  empty: [['empty', 'empty']],
  any: loadings.flatMap((a) => loadings.map((b) => [a, b] as const)),
} as const satisfies Record<string, readonly (readonly [Loading, Loading])[]>;

it('what of two faces holds, empty, as people sit and however the seats are taken', () => {
  let [held, missed] = [0, 0];
  for (let seed = 1; seed <= runs(12, 400); seed++) {
    const outing = randomCase(seed);
    const under = heldOn(outing);
    const [a, b] = outing.train.vehicles;
    for (const which of ['seated', 'empty', 'any'] as const) {
      const by = leastHeld([a, b], outing.riders, asks[which]);
      expect(Math.abs((under?.[which] ?? Number.NaN) - by), `case ${seed}, ${which}`).toBeLessThan(WITHIN);
      if (by > 0) held++;
      else missed++;
    }
  }
  // It is of use where some hold and some do not.
  expect(Math.min(held, missed)).toBeGreaterThan(0);
});
