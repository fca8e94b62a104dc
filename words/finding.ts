/** Findings, remedies and verdicts in words. */
import type { Change } from '../engine/outing/change.ts';
import type { Finding, FindingOf, Remedy, Verdict } from '../engine/questions/finding.ts';
import type { FindingCode } from '../engine/questions/findings.ts';
import type { RailState } from '../engine/things/rail.ts';
import { printQuantity, type Toward } from '../units/index.ts';
import { assumptionWords } from './findings/assumptions.ts';
import { balanceWords } from './findings/balance.ts';
import { brakeGearWords } from './findings/brake-gear.ts';
import { brakeWords } from './findings/brakes.ts';
import { chainWords } from './findings/chains.ts';
import { couplerWords } from './findings/couplers.ts';
import { failureWords } from './findings/failures.ts';
import { faultWords } from './findings/fault.ts';
import { flagWords } from './findings/flag.ts';
import { gapWords } from './findings/gap.ts';
import { haulWords } from './findings/haul.ts';
import { holdWords } from './findings/hold.ts';
import { hostWords } from './findings/host.ts';
import { partingWords } from './findings/part.ts';
import { practiceWords } from './findings/practice.ts';
import { ratingWords } from './findings/ratings.ts';
import { sightWords } from './findings/sight.ts';
import { speedWords } from './findings/speed.ts';
import { surveyWords } from './findings/survey.ts';
import { swingWords } from './findings/swing.ts';
import { type Tellers, type Told, type Tools, toolsFor, whereWords } from './findings/teller.ts';
import { chainage, riderName, say, trade, type Voice, vehicleName } from './voice.ts';

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
  ...partingWords,
  ...practiceWords,
  ...ratingWords,
  ...sightWords,
  ...speedWords,
  ...surveyWords,
  ...swingWords,
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

const verdicts: Readonly<Record<Verdict, string>> = {
  go: 'go',
  limits: 'go within limits',
  hold: 'hold',
  unknown: 'cannot tell',
};

export const tellVerdict = (verdict: Verdict): string => verdicts[verdict];

const states: Readonly<Record<RailState, string>> = {
  dry: 'dry',
  damp: 'damp',
  wet: 'wet',
  greasy: 'greasy',
  sanded: 'sanded',
};
export const tellRail = (state: RailState): string => states[state];

const list = (names: readonly string[]): string =>
  names.length <= 1 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

/** What to do, as an order. */
export function tellChange(change: Change, voice: Voice): string {
  const names = (ids: readonly string[]): string => list(ids.map((id) => vehicleName(voice, id)));
  const rider = (id: string): string => riderName(voice, id);
  const speed = (v: number): string =>
    printQuantity(v, 'speed', { system: voice.system, toward: 'down', digits: 2 });
  switch (change.kind) {
    case 'fewer-cars':
      return change.leave.length === 1
        ? `leave ${names(change.leave)} behind`
        : `leave ${change.leave.length} cars behind: ${names(change.leave)}`;
    case 'fewer-riders':
      return `leave ${change.leave.length === 1 ? 'one rider' : `${change.leave.length} riders`} behind: ${list(change.leave.map(rider))}`;
    case 'slower':
      return `run at ${speed(change.speed)} at the most from ${chainage(voice, change.from, 'down')} to ${chainage(voice, change.to, 'up')}`;
    case 'slower-everywhere':
      return `run at ${speed(change.speed)} at the most everywhere`;
    case 'brake-car':
      return `give ${vehicleName(voice, change.vehicle)} the brake of ${vehicleName(voice, change.like)}`;
    case 'rail-state':
      return change.state === 'sanded' ? 'sand under the engine’s driving wheels' : 'wait for a dry rail';
    case 'order':
      return `change the order to ${names(change.order)}`;
    case 'seat':
      return list(
        change.moves.map(
          (m) => `move ${rider(m.rider)} to seat ${m.seat} of ${vehicleName(voice, m.vehicle)}`,
        ),
      );
    case 'ballast':
      return `put ${say(voice, { si: change.mass, kind: 'mass' }, 'up')} of ballast under the floor of ${vehicleName(voice, change.vehicle)}, no higher than ${say(voice, { si: change.height, kind: 'length' }, 'down')} above the rail`;
    case 'chains':
      return 'fasten safety chains between all vehicles';
    case 'chain-size':
      return `fit a grade ${change.grade} chain of ${say(voice, { si: change.size, kind: 'length' }, 'up')} ${change.gap === undefined ? 'behind every vehicle' : `behind vehicle ${change.gap + 1}`}, with hooks and links to match`;
    case 'longer-coupling':
      return `fit a bar ${say(voice, { si: change.by, kind: 'length' }, 'up')} longer behind vehicle ${change.gap + 1}`;
    case 'guard':
      return `take a ${trade(voice.wording, 'conductor')} on the last car`;
    case 'parking-brake':
      return `fit ${vehicleName(voice, change.vehicle)} with a parking brake of ${say(voice, { si: change.force, kind: 'force' }, 'up')}`;
    case 'together':
      return change.changes.map((c) => tellChange(c, voice)).join(', and ');
    case 'brake-kind':
      return `work the train brake as ${change.brake}`;
  }
}

/** One that leaves the word as it is says so: it clears this, and something else stands. */
export const tellRemedy = ({ change, betters, verdict }: Remedy, voice: Voice): string =>
  `${tellChange(change, voice)} (${betters ? 'then' : 'clears this, and the word stays'}: ${tellVerdict(verdict)})`;
