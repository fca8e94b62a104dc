/** Every finding there is: what the questions say that they can find, together. A new question adds its table here. */
import { assumptionFindings } from './assumptions/findings.ts';
import { balanceFindings } from './balance/findings.ts';
import { brakeGearFindings, brakePartFindings } from './brakes/findings.ts';
import { chainFindings } from './chains/findings.ts';
import { clearanceFindings } from './clearance/findings.ts';
import { couplerFindings } from './couplers/findings.ts';
import { crestFindings } from './crests/findings.ts';
import { crewFindings } from './crew/findings.ts';
import type { FactKinds, Facts } from './facts.ts';
import { failureFindings } from './failures/findings.ts';
import { faultFindings } from './fault.ts';
import { flagFindings } from './flag/findings.ts';
import { gapFindings } from './gap/findings.ts';
import { haulFindings } from './haul/findings.ts';
import { holdFindings } from './hold/findings.ts';
import { hostFindings } from './host/findings.ts';
import { humpFindings } from './humps/findings.ts';
import { moveFindings, wayBackFindings } from './moves.ts';
import { orderFindings } from './order/findings.ts';
import { partFindings } from './part/findings.ts';
import { pitchFindings } from './pitch/findings.ts';
import { practiceFindings } from './practice/findings.ts';
import { ratingFindings } from './ratings/findings.ts';
import { sightFindings } from './sight/findings.ts';
import { speedFindings } from './speed/findings.ts';
import { standardFindings } from './standards/findings.ts';
import { surveyFindings } from './survey/findings.ts';
import { swingFindings } from './swing/findings.ts';
import { wheelFindings } from './wheels/findings.ts';

type Tables = typeof assumptionFindings &
  typeof balanceFindings &
  typeof brakeGearFindings &
  typeof brakePartFindings &
  typeof chainFindings &
  typeof clearanceFindings &
  typeof couplerFindings &
  typeof failureFindings &
  typeof faultFindings &
  typeof flagFindings &
  typeof gapFindings &
  typeof haulFindings &
  typeof holdFindings &
  typeof hostFindings &
  typeof moveFindings &
  typeof orderFindings &
  typeof partFindings &
  typeof pitchFindings &
  typeof practiceFindings &
  typeof ratingFindings &
  typeof sightFindings &
  typeof speedFindings &
  typeof standardFindings &
  typeof surveyFindings &
  typeof wayBackFindings &
  typeof swingFindings &
  typeof crestFindings &
  typeof crewFindings &
  typeof humpFindings &
  typeof wheelFindings;

export type FindingCode = keyof Tables;

/** The facts of a finding, by its code. */
export type FactsOf<C extends FindingCode> = C extends FindingCode ? Facts<Tables[C]> : never;

/** Kinds of the facts of every finding. */
export const factKinds: Readonly<Record<FindingCode, FactKinds>> = {
  ...assumptionFindings,
  ...balanceFindings,
  ...brakeGearFindings,
  ...brakePartFindings,
  ...chainFindings,
  ...couplerFindings,
  ...failureFindings,
  ...faultFindings,
  ...flagFindings,
  ...gapFindings,
  ...haulFindings,
  ...holdFindings,
  ...hostFindings,
  ...moveFindings,
  ...orderFindings,
  ...partFindings,
  ...pitchFindings,
  ...practiceFindings,
  ...ratingFindings,
  ...sightFindings,
  ...speedFindings,
  ...surveyFindings,
  ...wayBackFindings,
  ...swingFindings,
  ...crestFindings,
  ...crewFindings,
  ...humpFindings,
  ...wheelFindings,
  ...clearanceFindings,
  ...standardFindings,
};

export const findingCodes: readonly FindingCode[] = Object.keys(factKinds) as FindingCode[];

export const isFindingCode = (code: string): code is FindingCode => Object.hasOwn(factKinds, code);
