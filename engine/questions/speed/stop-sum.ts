/** The sum behind a limit or a gap that a stop sets. */
import type { SumRef } from '../../base/sum.ts';
import { evenStop } from '../../motion/even.ts';
import type { Prepared } from '../../motion/prepare.ts';
import type { SpeedMap } from './types.ts';

/** The cautious stop from a speed at a place of the map. */
export function stopSum(
  ready: Prepared,
  map: SpeedMap,
  j: number,
  speed: number,
  differs: 'even' | 'margin' = 'even',
  fall?: number,
): { sum?: SumRef } {
  const { cautious } = ready.models(map.railState);
  const sum = evenStop(cautious, ready.context.loaded.mass, map.at[j], speed, fall);
  return sum ? { sum: { ...sum, differs } } : {};
}
