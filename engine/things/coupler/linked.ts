/** Which couplings bear another height. */
import type { Coupling } from '../vehicle/types.ts';

const LINK = /link|bar|pin|rod/i;

/** Links, bars and pins couple whatever stands a little higher or lower: nothing rides over anything. */
export const isLinked = (front: Coupling, rear: Coupling): boolean =>
  LINK.test(front.type) || LINK.test(rear.type);
