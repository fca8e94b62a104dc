/** How many of the hands dealt, looked at in stages: most places are clear after fifty. */

/** Of all hands this many in a hundred may overrun. */
const ALLOWED = 0.013;
/** Below this share nothing more need be dealt. */
const CLEAR = 0.004;

export interface Odds {
  readonly share: number;
  /** More than is allowed, and not by chance (three standard deviations). */
  readonly tooMany: boolean;
}

/** @param most hands dealt at most */
export function oddsOf(most: number, happens: (hand: number) => boolean): Odds {
  let [i, n] = [0, 0];
  for (const stage of [50, 300, most]) {
    for (; i < stage; i++) if (happens(i)) n++;
    if (n / i < CLEAR) break;
  }
  const share = n / i;
  return { share, tooMany: share > ALLOWED + 3 * Math.sqrt((ALLOWED * (1 - ALLOWED)) / i) };
}

/** Hands at most in the ordinary run. */
export const MOST_HANDS = 1000;
