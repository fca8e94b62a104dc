/** How fast in a driver's own measure: what is slower than a walk is said to be, for no needle shows it. */
import { KEPT_SPEED } from '../engine/questions/speed/slowest.ts';

/** @param speed m/s */
export const slowerThanAWalk = (speed: number): boolean => speed < KEPT_SPEED * (1 - 1e-9);

/** ", slower than a walk", or nothing. */
export const walkWords = (speed: number): string => (slowerThanAWalk(speed) ? ', slower than a walk' : '');
