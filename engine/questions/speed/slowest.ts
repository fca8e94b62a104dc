/** How slowly anybody drives. */
import type { Outing } from '../../outing/types.ts';

type Rows = Pick<Outing, 'assumed'>;

/**
 * Slower than this nobody drives: a slow walk, which needs no speedometer, m/s. Who is told 0.6 mph runs at what the
 * engine will do, and then does not stop in time.
 */
export const slowestDriven = ({ assumed }: Rows): number => assumed.practice['slowest-driven'].value;

/** A brisk walk: slower than this a train is in everybody's way, m/s. */
export const keptSpeed = ({ assumed }: Rows): number => assumed.practice['kept-speed'].value;
