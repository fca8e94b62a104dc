/** The ladder in words: where it leads, and what a driver minds while something limits. */
import type { Ladder, LadderStep } from '../engine/answer/ladder.ts';
import type { Finding } from '../engine/questions/finding.ts';
import type { FindingCode } from '../engine/questions/findings.ts';
import { tellMeasure } from './field.ts';
import { slowerThanAWalk } from './pace.ts';
import { tellVerdict } from './verdict.ts';
import { chainage, distance, inWording, say, type Voice, vehicleName } from './voice.ts';

const upright =
  'Brief the riders before they sit down: stay upright, feet in, nobody reaches out. Do not stand on cant.';
const atTheBrake =
  'Somebody stays at the brake while it stands there, and chocks the wheels before leaving it.';

/** What the driver must do where it stays. */
const minds: Readonly<Partial<Record<FindingCode, string>>> = {
  'all-lean-goes-over': upright,
  'lean-small': upright,
  'speed-limited': 'Run no faster there.',
  'curve-speed-limited-by-balance': 'Run no faster there.',
  'others-not-said': 'Ask whoever is in charge: no other train on the line until this one is back.',
  'surge-pushed': 'Lock the surge brakes out for the push, and unlock them before the train is pulled again.',
  'gap-needed': 'Keep that far behind the train ahead.',
  'holds-only-while-brake-is-tight': atTheBrake,
  'no-parking-brake': atTheBrake,
  'leak-unknown': atTheBrake,
  'leaks-off-before-time': atTheBrake,
  'wheels-slide': 'Brake gently; ease the brake as soon as a wheel slides.',
  'slow-on-grade': 'Do not stop on the {grade}.',
  'few-applications': 'Let the brake fill again between two stops.',
  'brake-slow-to-release': 'Wait for the release before pulling away.',
  'brake-not-tried': 'Try a stop with this engine before riders board.',
  'coupler-kinds-differ': 'Put in what couples both, and pull on it by hand before anybody rides.',
  'dark-at-night': 'Be in before dusk.',
  'head-unmanned': 'Nobody leaves the engine alone.',
  'way-back': 'Look at the way back too before it leaves, and run that way by its own speeds.',
  'structures-not-measured': 'Push the widest and the highest through by hand before anybody rides.',
};

/** "" where the finding itself says what to do. */
export const mindWords = (code: FindingCode, { wording }: Pick<Voice, 'wording'>): string =>
  inWording(minds[code] ?? '', wording);

/** "go within limits, slower than a walk in places". */
export const stepWord = ({ verdict, slowest = Infinity }: LadderStep, voice: Pick<Voice, 'outing'>): string =>
  `${tellVerdict(verdict)}${slowerThanAWalk(slowest, voice.outing) ? ', slower than a walk where it is slowest' : ''}`;

/** What to measure, as an order: of sight how much of it would do, for that is what one looks for. */
export function measureStepWords(finding: Finding, voice: Voice): string {
  const { code, facts, required, measure, where } = finding;
  if ((code === 'sight-unknown' || code === 'night-sight-unknown') && facts.at && facts.stop && required) {
    const of =
      code === 'night-sight-unknown'
        ? 'how far the driver sees after dark, pacing it'
        : where.place === undefined
          ? 'how far the driver sees, pacing it'
          : `from how far ${where.place} is seen`;
    return `measure ${of} at ${chainage(voice, facts.at.si)}: at ${say(voice, required)} the train needs ${distance(voice, facts.stop.si, 'up')}; only ${distance(voice, facts.sight.si, 'down')} is assumed`;
  }
  const of = where.vehicle === undefined ? '' : `for ${vehicleName(voice, where.vehicle)}: `;
  return `measure ${of}${tellMeasure(measure ?? '', voice.wording)}`;
}

/** Where the steps lead, or why there are none. */
export function leadWords({ from, steps, verdict, measure }: Ladder): string {
  const word = tellVerdict(verdict);
  if (steps.length > 0)
    return measure.length > 0
      ? `Until that is known, the shortest way to ${word}`
      : `The shortest way to ${word}`;
  if (from === 'go') return 'Nothing has to change';
  if (from === 'limits') return `${capital(word)} is the best word for this train here`;
  return from === 'unknown' ? 'No change makes up for it' : 'No way was found';
}

/** What stays, and why nothing is proposed against it: the search may leave two cars behind for the word, and no more. */
export function leftWords({ verdict, steps }: Ladder): string {
  if (verdict === 'go') return '';
  const stays = `${steps.length > 0 ? 'Then there' : 'There'} stays`;
  if (verdict === 'unknown') return `${stays}, until it is measured:`;
  return `${stays} what no change that was tried clears:`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
