/** A force that was measured at a stand falls with speed as its own blocks do, here and in the engine. */
import { expect, it } from 'vitest';
import { exact } from '../../engine/base/quantity.ts';
import { prepare } from '../../engine/motion/prepare.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { BlockMaterial } from '../../engine/things/vehicle/types.ts';
import { assumedOuting } from '../support/true-trains.ts';
import { groundOf } from './ground.ts';
import { hand, likelyDeal, tableOf } from './hand.ts';
import { nothingTold, stop, wayAhead } from './stop.ts';
import { answering, carsOf } from './train.ts';

const [AT, SPEED] = [120, 5];

function withBlocks(block: BlockMaterial): Outing {
  const outing = assumedOuting(3);
  const vehicles = outing.train.vehicles.map((v) => ({
    ...v,
    brakes: v.brakes.map((b) => ({ ...b, block })),
  }));
  return {
    ...outing,
    train: { ...outing.train, vehicles },
    conditions: { ...outing.conditions, reaction: exact(0) },
  };
}

const byWitness = (outing: Outing): number => {
  const told = nothingTold();
  stop(
    wayAhead(groundOf(outing), carsOf(outing), AT),
    hand(tableOf(outing, answering(outing)), likelyDeal),
    SPEED,
    told,
  );
  return told.distance;
};

it('of cast iron and of composition', () => {
  const [iron, composition] = (['cast-iron', 'composition'] as const).map(withBlocks);
  for (const outing of [iron, composition]) {
    const engine = stopDistance(prepare(openOuting(outing)).models('dry').likely, AT, SPEED);
    expect(byWitness(outing) / engine).toBeCloseTo(1, 2);
  }
  // What the blocks are made of tells on the stop.
  expect(byWitness(iron) / byWitness(composition)).toBeGreaterThan(1.01);
});
