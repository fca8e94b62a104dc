/**
 * The answer in one sentence, under its word: what holds it, or how fast and where slower; how many cars and what sets
 * it; how far behind the train ahead. From the same data and with the same words as the tables.
 */
import type { Answer } from '../engine/answer/types.ts';
import { tellFinding } from '../words/finding.ts';
import { distance, type Voice } from '../words/voice.ts';
import { leastReason, leastWords } from './count-ways.ts';
import { drivenRows, drivenSpeed } from './driven.ts';

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

function speedPart(answer: Answer, voice: Voice): string {
  // Coming to a stand at the end of a line is what every train does there.
  const list = drivenRows(answer, voice).filter(({ zone }) => zone.kind === 'run');
  if (list.length === 0) return '';
  const fastest = list.reduce((a, b) => (b.zone.speed > a.zone.speed ? b : a));
  const slowest = list.reduce((a, b) => (b.zone.speed < a.zone.speed ? b : a));
  const { plannedSpeed } = voice.outing;
  const planned =
    plannedSpeed !== undefined && plannedSpeed < fastest.zone.speed
      ? ` (planned: ${drivenSpeed(voice, plannedSpeed)})`
      : '';
  const top = `no faster than ${fastest.speed}${planned}`;
  if (slowest.speed === fastest.speed) return top;
  const slower = list.filter(
    (s, i) => s.speed !== fastest.speed && (i === 0 || list[i - 1].speed === fastest.speed),
  );
  const places = slower.length > 1 ? `, slower at ${slower.length} places, the slowest` : ', and';
  return `${top}${places} ${slowest.speed} from ${slowest.from} to ${slowest.to}`;
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
