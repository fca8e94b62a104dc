/** How slowly anybody drives. */
import { MPH } from '../../base/constants.ts';

/**
 * Slower than this nobody drives: a slow walk, which needs no speedometer, m/s (2 mph; common practice, no source).
 * Who is told 0.6 mph runs at what the engine will do, and then does not stop in time.
 */
export const SLOWEST_DRIVEN: number = 2 * MPH;

/** A brisk walk: slower than this a train is in everybody's way, m/s (3 mph; common practice, no source). */
export const KEPT_SPEED: number = 3 * MPH;
