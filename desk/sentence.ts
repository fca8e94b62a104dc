/**
 * The answer in one sentence, under its word: what holds it, or how fast and where slower; how many cars and what sets
 * it; how far behind the train ahead; how hard one may brake. From the same data and with the same words as the tables.
 */
import type { Answer } from '../engine/answer/types.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { runsAlone } from '../engine/questions/gap/meeting.ts';
import type { DrivenZone } from '../engine/questions/speed/types.ts';
import { tellFinding } from '../words/finding.ts';
import { hardestWords } from '../words/findings/brake-gear.ts';
import { brakeKindWords } from '../words/findings/brakes.ts';
import { slowerThanAWalk, walkWords } from '../words/pace.ts';
import { staysHere } from '../words/verdict.ts';
import { distance, say, type Voice } from '../words/voice.ts';
import { leastReason, leastWords, NO_CAR } from './count-ways.ts';
import { type DrivenRow, drivenOf, drivenRows, drivenSpeed } from './driven.ts';

/** The parts of the sentence; empty where there is nothing to say, or not yet. */
export interface Sentence {
  /** Why not, where it may not leave as it is. */
  readonly not: string;
  readonly speed: string;
  /** What the way back allows less than this way. */
  readonly back: string;
  readonly cars: string;
  readonly gap: string;
  readonly brake: string;
}

export function sentenceParts(answer: Answer, voice: Voice): Sentence {
  const { verdict, findings } = answer;
  if (verdict === 'hold' || verdict === 'unknown') {
    const worst = findings[0];
    const not = worst ? tellFinding(worst, voice).what.replace(/\.$/, '') : '';
    return {
      not,
      speed: '',
      back: '',
      cars: carsPart(answer, voice, worst),
      gap: '',
      brake: '',
    };
  }
  const gap = gapToKeep(answer, voice.outing);
  return {
    not: '',
    speed: speedPart(answer, voice),
    back: backPart(answer, voice),
    cars: carsPart(answer, voice),
    gap:
      gap === undefined
        ? ''
        : gap === ALONE
          ? `with ${NO_OTHER_TRAIN}`
          : `${distance(voice, gap, 'up')} behind the train ahead`,
    brake: brakePart(answer, voice),
  };
}

export function sentence(answer: Answer, voice: Voice): string {
  const { not, speed, back, cars, gap, brake } = sentenceParts(answer, voice);
  const parts = [not, speed, back, cars, gap, brake].filter((part) => part !== '');
  const all = parts.join('; ');
  return all === '' ? '' : `${all[0].toUpperCase()}${all.slice(1)}.`;
}

/** The zones on the way, fastest and slowest; undefined: none is told. */
export function speedEnds(
  answer: Answer,
  shown: Pick<Voice, 'system'>,
): { readonly fastest: DrivenZone; readonly slowest: DrivenZone } | undefined {
  // Coming to a stand at the end of a line is what every train does there.
  const zones = (drivenOf(answer, shown)?.zones ?? []).filter(({ kind }) => kind === 'run');
  if (zones.length === 0) return undefined;
  return {
    fastest: zones.reduce((a, b) => (b.speed > a.speed ? b : a)),
    slowest: zones.reduce((a, b) => (b.speed < a.speed ? b : a)),
  };
}

/** There is no train to keep a distance from, or none may be there. */
export const ALONE = 'alone';
export const NO_OTHER_TRAIN = 'no other train on the line';

/** The greatest gap to the train ahead that the line asks for, m; undefined: none is told, as to whoever may not leave. */
function greatestGap({ speeds, verdict }: Answer): number | undefined {
  if (staysHere(verdict) !== undefined) return undefined;
  const most = speeds?.gap.reduce((a, b) => Math.max(a, b), 0);
  return most !== undefined && Number.isFinite(most) ? most : undefined;
}

/** What is kept from other trains by whoever may leave: that distance, or that none is on the line. */
export const gapToKeep = (answer: Answer, outing: Outing): number | typeof ALONE | undefined =>
  staysHere(answer.verdict) === undefined && runsAlone(outing) ? ALONE : greatestGap(answer);

function speedPart(answer: Answer, voice: Voice): string {
  const ends = speedEnds(answer, voice);
  if (!ends) return '';
  const list = drivenRows(answer, voice).filter(({ zone }) => zone.kind === 'run');
  const rowOf = (zone: DrivenZone): DrivenRow => list.find((row) => row.zone === zone) as DrivenRow;
  const [fastest, slowest] = [rowOf(ends.fastest), rowOf(ends.slowest)];
  const { plannedSpeed } = voice.outing;
  const planned =
    plannedSpeed !== undefined && plannedSpeed < fastest.zone.speed
      ? ` (planned: ${drivenSpeed(voice, plannedSpeed)})`
      : '';
  const top = `no faster than ${fastest.speed}${walkWords(fastest.zone.speed, voice.outing)}${planned}`;
  if (slowest.speed === fastest.speed) return top;
  const slower = list.filter(
    (s, i) => s.speed !== fastest.speed && (i === 0 || list[i - 1].speed === fastest.speed),
  );
  const faster = list.filter((row) => row.speed === fastest.speed);
  // What is true of most of the way is said first: "6 mph, and 4 mph nearly everywhere" misleads.
  if (list.length === 2 && wayOf(faster[0].zone, voice.outing) < wayOf(slowest.zone, voice.outing))
    return `no faster than ${slowest.speed}${walkWords(slowest.zone.speed, voice.outing)}, but ${fastest.speed}${planned} ${stretch(faster[0], voice.outing)}`;
  const places = slower.length > 1 ? `, slower at ${slower.length} places, the slowest` : ', and';
  const walk = slowerThanAWalk(fastest.zone.speed, voice.outing)
    ? ''
    : walkWords(slowest.zone.speed, voice.outing);
  return `${top}${places} ${slowest.speed}${walk === '' ? '' : `${walk},`} ${stretch(slowest, voice.outing)}`;
}

/** A loop's zone may run over its origin. */
const goesRound = ({ from, to }: DrivenZone, { line, direction }: Outing): boolean =>
  line.loop && (direction === 'forward' ? to <= from : to >= from);

/** How far a zone reaches, m. */
const wayOf = (zone: DrivenZone, outing: Outing): number => {
  const way = Math.abs(zone.to - zone.from);
  return goesRound(zone, outing) ? outing.line.length - way : way;
};

const stretch = ({ zone, from, to }: DrivenRow, outing: Outing): string =>
  `from ${from} ${goesRound(zone, outing) ? 'round ' : ''}to ${to}`;

function backPart({ findings }: Answer, voice: Voice): string {
  const back = findings.find((f) => f.code === 'way-back');
  if (!back) return '';
  const { plannedSpeed = Infinity } = voice.outing;
  return back.found && back.found.si < plannedSpeed
    ? `on the way back no faster than ${say(voice, back.found, 'down')}${walkWords(back.found.si, voice.outing)} in places`
    : 'on the way back less is allowed';
}

/** @param said why it may not leave: not given again as the reason of the count */
function carsPart({ cars }: Answer, voice: Voice, said?: Finding): string {
  const rail = voice.outing.conditions.railState;
  const today = cars.find((c) => c.railState === rail);
  if (!today) return '';
  if (today.least === null && today.by === null) return 'how many cars, nobody can tell';
  const saidAlready = said?.code === 'no-brake-answers' && today.leastSets?.what === 'no-brake';
  const reason = saidAlready ? '' : leastReason(today, voice);
  const because = reason === '' ? '' : ` (${reason})`;
  if (today.least === null) return `no number of cars${because}`;
  const anywhere =
    today.pulled !== null && today.pulled < today.least
      ? `, and ${today.none.includes('pulled') || today.pulled === 0 ? NO_CAR : `${today.pulled} at most`} if it must start anywhere`
      : '';
  const slower =
    today.stopped !== null && today.stopped < today.least
      ? `, slower with ${today.stopped === 0 || today.none.includes('stopped') ? 'any' : `more than ${today.stopped}`}`
      : '';
  if (today.least === 0) return `no car, the engine alone${because}`;
  return `at most ${leastWords(today)} ${today.least === 1 ? 'car' : 'cars'}${because}${slower}${anywhere}`;
}

/** Of the brakes that a driver can ease the one of which least may be put on; empty: none slides its wheels. */
function brakePart({ findings }: Answer, voice: Voice): string {
  const eased = findings.flatMap((f) => (f.code === 'wheels-slide' && f.facts.eased ? [f] : []));
  if (eased.length === 0) return '';
  const tightest = eased.reduce((a, b) => (b.facts.share.si < a.facts.share.si ? b : a));
  return `brake no harder than ${hardestWords(tightest, voice)} (${brakeKindWords(tightest.facts.gear)})`;
}
