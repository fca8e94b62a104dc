/** What stops the wheels. */
import type { BlockMaterial, BrakeGear } from './types.ts';

/** What the blocks are made of, where somebody said so. */
export const blockOf = ({ block, rigging, hand, surge }: BrakeGear): BlockMaterial | undefined =>
  block ?? rigging?.block ?? hand?.block ?? surge?.block;
