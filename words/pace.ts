/** How fast in a driver's own measure: what is slower than a walk is said to be, for no needle shows it. */
import type { Outing } from '../engine/outing/types.ts';
import { keptSpeed } from '../engine/questions/speed/slowest.ts';

type Rows = Pick<Outing, 'assumed'>;

/** @param speed m/s */
export const slowerThanAWalk = (speed: number, outing: Rows): boolean =>
  speed < keptSpeed(outing) * (1 - 1e-9);

/** ", slower than a walk", or nothing. */
export const walkWords = (speed: number, outing: Rows): string =>
  slowerThanAWalk(speed, outing) ? ', slower than a walk' : '';
