/** The word of an answer. */
import type { Verdict } from '../engine/questions/finding.ts';

const verdicts: Readonly<Record<Verdict, string>> = {
  go: 'go',
  limits: 'go within limits',
  hold: 'hold',
  unknown: 'cannot tell',
};

export const tellVerdict = (verdict: Verdict): string => verdicts[verdict];

/** Why no speed and no gap are told as ones to run by; undefined: it may leave. */
export const staysHere = (verdict: Verdict): string | undefined =>
  verdict === 'hold' ? 'it may not leave' : verdict === 'unknown' ? 'not until it is known' : undefined;

/** Said over whatever shows speeds, braking points or gaps of such a train; empty: they are to be run by. */
export function notToRun(verdict: Verdict): string {
  const stays = staysHere(verdict);
  return stays === undefined ? '' : `Not to be run by: ${stays}.`;
}
