/** Does it fit: every wheelset against the track of one outing, every gap over its crests and sags. */
import { turnFindings, turnOf } from '../engine/answer/chainage.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import { ranked } from '../engine/answer/verdict.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { CrestGap } from '../engine/questions/crests/look.ts';
import { crests } from '../engine/questions/crests/question.ts';
import type { Finding } from '../engine/questions/finding.ts';
import type { WheelsetFit } from '../engine/questions/wheels/look.ts';
import { wheels } from '../engine/questions/wheels/question.ts';

export interface Fit {
  readonly wheelsets: readonly WheelsetFit[];
  readonly gaps: readonly CrestGap[];
  readonly findings: readonly Finding[];
  /** Chainages of wheelsets and gaps are in the running direction; this turns them into the line's own. */
  readonly at: (s: number) => number;
}

export function lookAtFit(outing: Outing): Fit {
  const inquiry = inquire(outing);
  const [track, line] = [inquiry.of(wheels), inquiry.of(crests)];
  return {
    wheelsets: track.data.wheelsets,
    gaps: line.data.gaps,
    findings: ranked(turnFindings(outing, [...track.findings, ...line.findings])),
    at: turnOf(outing),
  };
}
