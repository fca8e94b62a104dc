/**
 * The answer in one sentence, under its word: what holds it, or how fast and where slower; how many cars and what sets
 * it; how far behind the train ahead. From the same data and with the same words as the tables.
 */
import type { Answer } from '../engine/answer/types.ts';
import { tellFinding } from '../words/finding.ts';
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
}

export function sentenceParts(answer: Answer, voice: Voice): Sentence {
  const { verdict, findings } = answer;
  const cars = carsPart(answer, voice);
  if (verdict === 'hold' || verdict === 'unknown') {
    const worst = findings[0];
    return { not: worst ? tellFinding(worst, voice).what.replace(/\.$/, '') : '', speed: '', cars, gap: '' };
  }
  return { not: '', speed: speedPart(answer, voice), cars, gap: gapPart(answer, voice) };
}

export function sentence(answer: Answer, voice: Voice): string {
  const { not, speed, cars, gap } = sentenceParts(answer, voice);
  const parts = [not, speed, cars, gap].filter((part) => part !== '');
  const all = parts.join('; ');
  return all === '' ? '' : `${all[0].toUpperCase()}${all.slice(1)}.`;
}

/** Coming to a stand at the end of a line is what every train does there. */
const onTheWay = (s: SpeedStretch): boolean => s.reason !== 'stopping-end';

function speedPart({ speeds }: Answer, voice: Voice): string {
  if (!speeds) return '';
  const list = stretches(speeds).filter(onTheWay);
  if (list.length === 0) return '';
  const told = (s: SpeedStretch): string => say(voice, { si: s.speed, kind: 'speed' }, 'down');
  const fastest = list.reduce((a, b) => (b.speed > a.speed ? b : a));
  const slowest = list.reduce((a, b) => (b.speed < a.speed ? b : a));
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

function gapPart({ speeds }: Answer, voice: Voice): string {
  if (!speeds) return '';
  const most = speeds.gap.reduce((a, b) => Math.max(a, b), 0);
  return Number.isFinite(most) ? `${distance(voice, most, 'up')} behind the train ahead` : '';
}
