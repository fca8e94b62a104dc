/** The wind that presses on the side of a train. */
import type { Conditions } from './types.ts';

/** m/s. A wind from whatever side comes across somewhere on the line, most of all round a loop. */
export const windAcross = ({ crosswind, wind = 0 }: Pick<Conditions, 'crosswind' | 'wind'>): number =>
  crosswind ?? wind;
