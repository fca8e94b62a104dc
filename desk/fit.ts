/** Does it fit: every wheelset against the track of one outing. */
import { turnFindings, turnOf } from '../engine/answer/chainage.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import { ranked } from '../engine/answer/verdict.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { Finding } from '../engine/questions/finding.ts';
import type { WheelsetFit } from '../engine/questions/wheels/look.ts';
import { wheels } from '../engine/questions/wheels/question.ts';

export interface Fit {
  readonly wheelsets: readonly WheelsetFit[];
  readonly findings: readonly Finding[];
  /** Chainages of `wheelsets` are in the running direction; this turns them into the line's own. */
  readonly at: (s: number) => number;
}

export function lookAtFit(outing: Outing): Fit {
  const { data, findings } = inquire(outing).of(wheels);
  return {
    wheelsets: data.wheelsets,
    findings: ranked(turnFindings(outing, findings)),
    at: turnOf(outing),
  };
}
