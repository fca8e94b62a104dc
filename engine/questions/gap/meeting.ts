/**
 * May a train come the other way on this track? No distance behind the train ahead guards against one that comes toward
 * this one: both see each other at once, and both need room to stop. On a track that is run both ways trains are kept
 * apart by a rule (one train, a staff, signals, somebody's word) and never by sight (common practice, no source).
 */
import { runsBothWays } from '../../outing/moves.ts';
import type { Outing } from '../../outing/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

const PRACTICE = 'common practice, no source';

/**
 * How this train stands to others: alone on the line; taken to be alone, for nobody said; others only ahead of it or
 * behind; all out before any comes back; kept apart by the host's rule; or not kept apart.
 */
export type Meeting = 'alone' | 'not-said' | 'ahead' | 'all-out' | 'kept' | 'against-rule' | 'how' | 'sight';

export function meetingOf(outing: Outing): Meeting {
  const { otherTrains: others, host } = outing;
  const kept = host.keptApart?.value;
  const bothWays = runsBothWays(outing);
  if (others === 'none') return 'alone';
  if (kept === 'one-train') return others === undefined ? 'alone' : 'against-rule';
  if (others === 'same-way') return bothWays ? 'all-out' : 'ahead';
  if (others === undefined && !bothWays) return 'ahead';
  if (kept === undefined) return others === undefined ? 'not-said' : 'how';
  if (kept === 'sight') return others === undefined ? 'not-said' : 'sight';
  return 'kept';
}

/** No train to keep a distance from: none is there, or none may be. */
export const runsAlone = (outing: Outing): boolean => ['alone', 'not-said'].includes(meetingOf(outing));

export function askMeeting(outing: Outing): Finding[] {
  const rule = outing.host.keptApart;
  const source = rule?.source ?? PRACTICE;
  switch (meetingOf(outing)) {
    case 'alone':
    case 'ahead':
      return [];
    case 'not-said':
      return [
        makeFinding('others-not-said', 'limits', 'spacing', {
          source: PRACTICE,
          sure: 'stated',
          measure: 'outing.otherTrains',
        }),
      ];
    case 'all-out':
      return [makeFinding('all-out-first', 'notes', 'spacing', { source: PRACTICE, sure: 'stated' })];
    case 'how':
      return [
        makeFinding('kept-apart-not-said', 'unknown', 'spacing', {
          source: PRACTICE,
          sure: 'stated',
          measure: 'host.keptApart',
        }),
      ];
    case 'sight':
      return [makeFinding('kept-apart-by-sight', 'forbids', 'spacing', { source, sure: 'stated' })];
    case 'against-rule':
      return [makeFinding('one-train-only', 'forbids', 'spacing', { source, sure: 'stated' })];
    case 'kept':
      return [
        makeFinding('kept-apart', 'notes', 'spacing', {
          facts: { by: rule?.value as 'staff' | 'signals' | 'word' },
          source,
          sure: 'stated',
        }),
      ];
  }
}
