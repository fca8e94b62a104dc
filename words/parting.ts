/** Words for what becomes of a part of a train, and of the brakes left on it. */
import type { Outcome } from '../engine/questions/part/types.ts';

/** As it stands in a table or on the map's key, harmless first. */
export const outcomeWords: Readonly<Record<Outcome, string>> = {
  stands: 'stops and stays',
  rolls: 'rolls off again, stops on the line',
  'rolls-through-place': 'rolls back through a place with people',
  'meets-following': 'meets the following train',
  'runs-round': 'runs on round the line',
  'leaves-line': 'runs off the end of the line',
  overturns: 'goes over in a curve',
};

export const chainWords = {
  holds: 'holds',
  'holds, then replace': 'holds once, then replace it',
  'too weak': 'too weak',
  'cannot tell': 'strength not known',
  'no chain': 'none',
} as const;
