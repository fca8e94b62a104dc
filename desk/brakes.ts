/** The brakes of an outing looked at closely, in the line's own chainage. */
import { askBrakes, type BrakeData } from '../engine/braking/ask.ts';
import { type DesignRequest, type DesignResult, designBrakes } from '../engine/braking/design.ts';
import { ranked } from '../engine/finding/make.ts';
import type { Finding } from '../engine/finding/types.ts';
import { openOuting } from '../engine/outing/context.ts';
import { type Outing, type RailState, railStates } from '../engine/outing/types.ts';

export interface BrakeLook {
  readonly findings: readonly Finding[];
  readonly data: BrakeData;
}

export function lookAtBrakes(outing: Outing): BrakeLook {
  const { findings, data } = askBrakes(openOuting(outing));
  if (outing.direction === 'forward') return { findings: ranked(findings), data };
  const turn = (s: number): number => outing.line.length - s;
  const turned = findings.map((f): Finding => {
    const { from, to, ...rest } = f.where;
    return from === undefined || to === undefined
      ? f
      : { ...f, where: { ...rest, from: turn(to), to: turn(from) } };
  });
  return {
    findings: ranked(turned),
    data: { ...data, standing: { ...data.standing, at: turn(data.standing.at) } },
  };
}

/** Rail states in which a brake ratio may slide: it is above the least adhesion of that state. */
export const slidesIn = (outing: Outing, ratio: number): readonly RailState[] =>
  railStates.filter((state) => ratio > outing.assumed.adhesion[state].low);

export const designFor = (outing: Outing, request: DesignRequest): DesignResult =>
  designBrakes(openOuting(outing), request);
