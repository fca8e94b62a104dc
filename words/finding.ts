import type { Finding, FindingOf } from '../engine/questions/finding.ts';
import type { FindingCode } from '../engine/questions/findings.ts';
import type { Toward } from '../units/index.ts';
import { assumptionWords } from './findings/assumptions.ts';
import { balanceWords } from './findings/balance.ts';
import { brakeGearWords } from './findings/brake-gear.ts';
import { brakeWords } from './findings/brakes.ts';
import { chainWords } from './findings/chains.ts';
import { clearanceWords } from './findings/clearance.ts';
import { couplerWords } from './findings/couplers.ts';
import { crestWords } from './findings/crests.ts';
import { crewWords } from './findings/crew.ts';
import { failureWords } from './findings/failures.ts';
import { faultWords } from './findings/fault.ts';
import { flagWords } from './findings/flag.ts';
import { gapWords } from './findings/gap.ts';
import { haulWords } from './findings/haul.ts';
import { holdWords } from './findings/hold.ts';
import { hostWords } from './findings/host.ts';
import { humpWords } from './findings/humps.ts';
import { orderWords } from './findings/order.ts';
import { partingWords } from './findings/part.ts';
import { pitchWords } from './findings/pitch.ts';
import { practiceWords } from './findings/practice.ts';
import { ratingWords } from './findings/ratings.ts';
import { sightWords } from './findings/sight.ts';
import { speedWords } from './findings/speed.ts';
import { standardWords } from './findings/standards.ts';
import { surveyWords } from './findings/survey.ts';
import { swingWords } from './findings/swing.ts';
import { type Tellers, type Told, type Tools, toolsFor, whereWords } from './findings/teller.ts';
import { wheelWords } from './findings/wheels.ts';
import type { Voice } from './voice.ts';

/** The words of every question. A question adds its record here. */
const tellers: Tellers = {
  ...assumptionWords,
  ...balanceWords,
  ...brakeGearWords,
  ...brakeWords,
  ...chainWords,
  ...couplerWords,
  ...failureWords,
  ...faultWords,
  ...flagWords,
  ...gapWords,
  ...haulWords,
  ...holdWords,
  ...hostWords,
  ...orderWords,
  ...partingWords,
  ...practiceWords,
  ...ratingWords,
  ...sightWords,
  ...speedWords,
  ...surveyWords,
  ...pitchWords,
  ...swingWords,
  ...crestWords,
  ...crewWords,
  ...humpWords,
  ...wheelWords,
  ...clearanceWords,
  ...standardWords,
};

export interface ToldFinding {
  readonly code: string;
  readonly what: string;
  readonly why: string;
  readonly where: string;
  readonly found: string;
  readonly required: string;
  /** "12 %" spare, negative where it fails. */
  readonly margin: string;
  readonly sure: string;
  readonly source: string;
  /** Path of the field that is asked for; `field.ts` has its words, which the first screen does not wait for. */
  readonly measure?: string;
}

const sureness: Readonly<Record<Finding['sure'], string>> = {
  measured: 'from measurements',
  stated: 'from stated figures',
  assumed: 'partly from assumed figures',
};

const opposite = { up: 'down', down: 'up', nearest: 'nearest' } as const;

/**
 * Which way the figure found is rounded so that the margin never looks better than it is. Short of what is
 * required, or with something to spare above it: the more the better, so down; else the less the better.
 */
function towardSafety({ found, required, margin }: Finding): Toward {
  if (!found || !required || margin === undefined || found.si === required.si) return 'nearest';
  return found.si < required.si === margin < 0 ? 'down' : 'up';
}

const wordsOf = <C extends FindingCode>(finding: FindingOf<C>, tools: Tools<C>): Told =>
  tellers[finding.code](finding, tools);

export function tellFinding(finding: Finding, voice: Voice): ToldFinding {
  const tools = toolsFor(finding, voice);
  return {
    code: finding.code,
    ...wordsOf(finding, tools),
    where: whereWords(finding, voice),
    found: finding.found ? tools.found(towardSafety(finding)) : '',
    required: finding.required ? tools.required(opposite[towardSafety(finding)]) : '',
    margin: finding.margin === undefined ? '' : `${Math.floor(finding.margin * 100)} %`,
    sure: sureness[finding.sure],
    source: finding.source,
    ...(finding.measure === undefined ? {} : { measure: finding.measure }),
  };
}
