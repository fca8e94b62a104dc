/** What a wet rail leaves of the friction between block and wheel. */
import { exact, type Quantity } from '../../base/quantity.ts';
import type { AssumedValues } from '../assumed.ts';
import { beneath, type RailState } from '../rail.ts';
import type { BlockMaterial } from '../vehicle/types.ts';

/** A force that was pulled with a spring balance does not say what the blocks are made of. */
export type Block = BlockMaterial | 'unknown';

/** Blocks that nobody named are cast iron or composition, the trade's usual ones: of the two composition keeps less. */
const CAREFUL: BlockMaterial = 'composition';

/**
 * Friction of the blocks today ÷ dry: w on a wet or greasy rail, (1 + w)/2 on a damp one, 1 on a dry one; sand changes nothing.
 *
 * w by material (`blockWet`). Source of the rows: tests/truth/brakes/block-wet.
 */
export function blockWetness(block: Block, state: RailState, { blockWet }: AssumedValues): Quantity {
  const rail = beneath(state);
  if (rail === 'dry') return exact(1);
  const wet = blockWet[block === 'unknown' ? CAREFUL : block];
  if (rail !== 'damp') return wet;
  const half = (w: number): number => (1 + w) / 2;
  return { ...wet, low: half(wet.low), value: half(wet.value), high: half(wet.high) };
}
