/** A brake force measured at a stand falls with speed as its block's friction does. */
import { exact, type Quantity } from '../../base/quantity.ts';
import type { AssumedValues } from '../assumed.ts';
import type { FrictionPoint } from './force.ts';
import { frictionAt } from './friction.ts';
import type { Block } from './wet.ts';

/**
 * Retarding force at a speed ÷ force measured at a stand: φ(v)/φ(0), of the likely friction.
 *
 * points of φ by speed, growing · speed m/s. 1 throughout for a material of which only the standing value is
 * known: composition is made to be so; of wood, steel and bronze it is only not known. Source: as the table's.
 */
export function speedShare(points: readonly FrictionPoint[], speed: number): number {
  return frictionAt(points, speed, 0) / frictionAt(points, 0, 0);
}

/** A second formula falls faster: this much of the first one's share from here on (tests/truth/brakes/block-speed). */
const LEAST_OF_SHARE = 0.87;
const REACHED_AT = 4.4704;

const known = new WeakMap<AssumedValues['blockFriction'], Map<Block, readonly FrictionPoint[]>>();

/**
 * That share by speed with its spread, as a table of friction whose value at a stand is 1.
 *
 * Composition holds at speed. A material of which only the standing value is known, or that nobody named, is taken
 * to fall as cast iron does: the careful end.
 */
export function shareBySpeed(block: Block, { blockFriction }: AssumedValues): readonly FrictionPoint[] {
  const tables = known.get(blockFriction) ?? new Map<Block, readonly FrictionPoint[]>();
  known.set(blockFriction, tables);
  const found = tables.get(block) ?? tableOf(block, blockFriction);
  tables.set(block, found);
  return found;
}

function tableOf(block: Block, blockFriction: AssumedValues['blockFriction']): readonly FrictionPoint[] {
  const own = block === 'unknown' ? [] : blockFriction[block];
  if (own.length === 1 && block === 'composition') return [{ speed: 0, friction: exact(1) }];
  const points = own.length > 1 ? own : blockFriction['cast-iron'];
  return points.map(({ speed }) => ({ speed, friction: spreadOf(speedShare(points, speed), speed) }));
}

const spreadOf = (share: number, speed: number): Quantity => ({
  value: share,
  low: share * (1 - (1 - LEAST_OF_SHARE) * Math.min(1, speed / REACHED_AT)),
  high: share,
  how: 'assumed',
});
