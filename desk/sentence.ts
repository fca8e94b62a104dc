/**
 * The answer in one sentence, under its word: what holds it, or how fast and where slower; how many cars and what sets
 * it; how far behind the train ahead; how hard one may brake. From the same data and with the same words as the tables.
 */
import type { Answer } from '../engine/answer/types.ts';
import { tellFinding } from '../words/finding.ts';
import { twentieths } from '../words/findings/stopping.ts';
import { distance, say, type Voice } from '../words/voice.ts';
import { leastReason, leastWords } from './count-ways.ts';
import { endsOf, type SpeedStretch, stretches } from './stretches.ts';

/** The parts of the sentence; empty where there is nothing to say, or not yet. */
export interface Sentence {
  /** Why not, where it may not leave as it is. */
  readonly not: string;
  readonly speed: string;
  readonly cars: string;
  readonly gap: string;
  readonly brake: string;
}

export function sentenceParts(answer: Answer, voice: Voice): Sentence {
  const { verdict, findings } = answer;
  const cars = carsPart(answer, voice);
  if (verdict === 'hold' || verdict === 'unknown') {
    const worst = findings[0];
    return {
      not: worst ? tellFinding(worst, voice).what.replace(/\.$/, '') : '',
      speed: '',
      cars,
      gap: '',
      brake: '',
    };
  }
  const gap = greatestGap(answer);
  return {
    not: '',
    speed: speedPart(answer, voice),
    cars,
    gap: gap === undefined ? '' : `${distance(voice, gap, 'up')} behind the train ahead`,
    brake: brakePart(answer, voice),
  };
}

export function sentence(answer: Answer, voice: Voice): string {
  const { not, speed, cars, gap, brake } = sentenceParts(answer, voice);
  const parts = [not, speed, cars, gap, brake].filter((part) => part !== '');
  const all = parts.join('; ');
  return all === '' ? '' : `${all[0].toUpperCase()}${all.slice(1)}.`;
}

/** Coming to a stand at the end of a line is what every train does there. */
const onTheWay = (s: SpeedStretch): boolean => s.reason !== 'stopping-end';

/** The fastest and the slowest stretch on the way; undefined: no speed is told. */
export function speedEnds({
  speeds,
}: Answer):
  | { readonly list: readonly SpeedStretch[]; readonly fastest: SpeedStretch; readonly slowest: SpeedStretch }
  | undefined {
  const list = speeds ? stretches(speeds).filter(onTheWay) : [];
  if (list.length === 0) return undefined;
  return {
    list,
    fastest: list.reduce((a, b) => (b.speed > a.speed ? b : a)),
    slowest: list.reduce((a, b) => (b.speed < a.speed ? b : a)),
  };
}

/** The greatest gap to the train ahead that the line asks for, m; undefined: none is told. */
export function greatestGap({ speeds }: Answer): number | undefined {
  const most = speeds?.gap.reduce((a, b) => Math.max(a, b), 0);
  return most !== undefined && Number.isFinite(most) ? most : undefined;
}

function speedPart(answer: Answer, voice: Voice): string {
  const ends = speedEnds(answer);
  if (!ends) return '';
  const { list, fastest, slowest } = ends;
  const told = (s: SpeedStretch): string => say(voice, { si: s.speed, kind: 'speed' }, 'down');
  const { plannedSpeed } = voice.outing;
  const planned =
    plannedSpeed !== undefined && plannedSpeed < fastest.speed
      ? ` (planned: ${say(voice, { si: plannedSpeed, kind: 'speed' }, 'down')})`
      : '';
  const top = `no faster than ${told(fastest)}${planned}`;
  if (told(slowest) === told(fastest)) return top;
  const [from, to] = endsOf(voice, slowest);
  const slower = list.filter(
    (s, i) => told(s) !== told(fastest) && (i === 0 || told(list[i - 1]) === told(fastest)),
  );
  const places = slower.length > 1 ? `, slower at ${slower.length} places, the slowest` : ', and';
  return `${top}${places} ${told(slowest)} from ${from} to ${to}`;
}

function carsPart({ cars }: Answer, voice: Voice): string {
  const rail = voice.outing.conditions.railState;
  const today = cars.find((c) => c.railState === rail);
  if (!today) return '';
  if (today.least === null && today.by === null) return 'how many cars, nobody can tell';
  const reason = leastReason(today, voice);
  const because = reason === '' ? '' : ` (${reason})`;
  if (today.least === null) return `no number of cars${because}`;
  const anywhere =
    today.pulled !== null && today.pulled < today.least
      ? `, ${today.none.includes('pulled') ? 'none' : today.pulled} if it must start anywhere`
      : '';
  const slower =
    today.stopped !== null && today.stopped < today.least
      ? `, slower with ${today.stopped === 0 || today.none.includes('stopped') ? 'any' : `more than ${today.stopped}`}`
      : '';
  return `at most ${leastWords(today)} ${today.least === 1 ? 'car' : 'cars'}${because}${slower}${anywhere}`;
}

/** Of the brakes that a driver can ease the one of which least may be put on; empty: none slides its wheels. */
function brakePart({ findings }: Answer, voice: Voice): string {
  const eased = findings.filter((f) => f.code === 'wheels-slide' && f.facts['eased'] === 'yes');
  if (eased.length === 0) return '';
  const tightest = eased.reduce((a, b) => (twentieths(b) < twentieths(a) ? b : a));
  const { gear, gauge } = tightest.facts;
  const most =
    typeof gauge === 'object' ? say(voice, gauge, 'down') : `${twentieths(tightest)} % of full brake`;
  return `brake no harder than ${most} (${gear})`;
}
