/** The word of an answer. */
import type { Verdict } from '../engine/questions/finding.ts';

const verdicts: Readonly<Record<Verdict, string>> = {
  go: 'go',
  limits: 'go within limits',
  hold: 'hold',
  unknown: 'cannot tell',
};

export const tellVerdict = (verdict: Verdict): string => verdicts[verdict];
