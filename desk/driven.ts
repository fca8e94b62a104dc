/**
 * The speeds that are driven, in words: zones with their landmarks, where to brake, and the seconds between posts
 * that keep a driver without a speedometer below them.
 */

import type { Answer } from '../engine/answer/types.ts';
import { FOOT } from '../engine/base/constants.ts';
import type { BrakingPoint, Driven, DrivenZone } from '../engine/questions/speed/types.ts';
import { reasonWords } from '../words/findings/speed.ts';
import { landmark, sideways } from '../words/landmark.ts';
import { distance, say, type Voice } from '../words/voice.ts';

export interface DrivenRow {
  readonly zone: DrivenZone;
  /** Chainages, in the running order. */
  readonly from: string;
  readonly to: string;
  /** The same by what is seen there. */
  readonly begins: string;
  readonly ends: string;
  readonly speed: string;
  readonly why: string;
  /** Least seconds from post to post; empty where nothing runs. */
  readonly posts: string;
  readonly cautiousStop: string;
  readonly gap: string;
}

export const drivenOf = (answer: Answer, { system }: Pick<Voice, 'system'>): Driven | null =>
  answer.driven?.[system] ?? null;

export function drivenRows(answer: Answer, voice: Voice): DrivenRow[] {
  const driven = drivenOf(answer, voice);
  if (!driven) return [];
  const { loop } = voice.outing.line;
  return driven.zones.map((zone, i, zones) => {
    const before = zones[i - 1] ?? (loop ? zones[zones.length - 1] : undefined);
    const after = zones[i + 1] ?? (loop ? zones[0] : undefined);
    const [begin, end] = [
      slower(zone, before) ? 'early' : 'late',
      slower(zone, after) ? 'late' : 'early',
    ] as const;
    return {
      zone,
      from: sideways(voice, zone.from, begin),
      to: sideways(voice, zone.to, end),
      begins: landmark(voice, zone.from, begin),
      ends: landmark(voice, zone.to, end),
      speed: zone.kind === 'arrive' ? 'arrive, stop' : drivenSpeed(voice, zone.speed),
      why: whyOf(zone),
      posts: zone.kind === 'run' ? postSeconds(voice, zone.speed) : '',
      cautiousStop: Number.isFinite(zone.cautiousStop)
        ? distance(voice, zone.cautiousStop, 'up')
        : 'does not stop',
      gap: Number.isFinite(zone.gap) ? distance(voice, zone.gap, 'up') : 'does not stop',
    };
  });
}

/** "no faster than 100 ft in 16 s · cautious stop 67 ft", with its landmarks first; where nothing runs, that alone. */
export function tellZone({ zone, from, to, begins, ends, posts, cautiousStop }: DrivenRow): string {
  const told = [
    begins === `at ${from}` && ends === `at ${to}` ? '' : `from ${bare(begins)} to ${bare(ends)}`,
    posts === '' ? '' : `no faster than ${posts}`,
    Number.isFinite(zone.cautiousStop) ? `cautious stop ${cautiousStop}` : cautiousStop,
  ];
  return told.filter((text) => text !== '').join(' · ');
}

/** "at Mill Lane" is Mill Lane. */
const bare = (landmark: string): string => landmark.replace(/^at /, '');

/** An arrival is slower than what it is arrived from. */
const slower = (zone: DrivenZone, than: DrivenZone | undefined): boolean =>
  than !== undefined && (zone.kind === 'arrive' || (than.kind !== 'arrive' && zone.speed < than.speed));

const whyOf = ({ reason: { kind, what } }: DrivenZone): string =>
  kind === 'host-line' ? 'host' : what === '' ? reasonWords(kind) : what;

/** 7 mph, 4.5 mph: rounded down, and no nought behind the point. */
export const drivenSpeed = (voice: Pick<Voice, 'system'>, speed: number): string =>
  say(voice, { si: speed * (1 + 1e-9), kind: 'speed' }, 'down').replace('.0 ', ' ');

/** Posts so far apart, m. */
export const POSTS = { imperial: 100 * FOOT, metric: 25 } as const;

function postSeconds(voice: Voice, speed: number): string {
  if (speed <= 0) return '';
  const far = POSTS[voice.system];
  return `${distance(voice, far, 'nearest').replace('.0 ', ' ')} in ${Math.ceil(far / speed - 1e-6)} s`;
}

/** Where the driver acts, in the running order; empty: nothing to brake for. */
export const actLines = (answer: Answer, voice: Voice): string[] =>
  (drivenOf(answer, voice)?.acts ?? []).map((act) => actLine(act, voice));

export function actLine({ at, target, kind, what, toSpeed }: BrakingPoint, voice: Voice): string {
  const where = landmark(voice, at, 'early');
  const chain = sideways(voice, at, 'early');
  const begin = where === `at ${chain}` ? where : `${where} (${chain})`;
  return kind === 'stop'
    ? `${begin}: brake for the stop ${what === 'end of line' ? 'at the end of the line' : `at ${what}`}`
    : `${begin}: down to ${drivenSpeed(voice, toSpeed)} by ${sideways(voice, target, 'early')} (${what})`;
}
