/** The brakes of an outing looked at closely, in the line's own chainage. */

import { turnFindings, turnOf } from '../engine/answer/chainage.ts';
import { ranked } from '../engine/answer/verdict.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import { askBrakes, type BrakeData } from '../engine/questions/brakes/ask.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { type RailState, toldRails } from '../engine/things/rail.ts';

export interface BrakeLook {
  readonly findings: readonly Finding[];
  readonly data: BrakeData;
}

export function lookAtBrakes(outing: Outing): BrakeLook {
  const { findings, data } = askBrakes(openOuting(outing));
  return {
    findings: ranked(turnFindings(outing, findings)),
    data: { ...data, standing: { ...data.standing, at: turnOf(outing)(data.standing.at) } },
  };
}

/** Rail states in which a brake ratio may slide: it is above the least adhesion of that state. */
export const slidesIn = (outing: Outing, ratio: number): readonly RailState[] =>
  toldRails(undefined).filter((state) => ratio > outing.assumed.adhesion[state].low);
