/** The answer in three figures that are read from afar: how fast, how many cars, how far behind; and how they changed. */
import type { Verdict } from '../engine/questions/finding.ts';
import { isCar } from '../engine/things/train/cars.ts';
import { staysHere, tellVerdict } from '../words/verdict.ts';
import { distance, type Voice } from '../words/voice.ts';
import type { Told } from './asked.ts';
import { leastWords } from './count-ways.ts';
import { drivenSpeed } from './driven.ts';
import { ALONE, gapToKeep, NO_OTHER_TRAIN, speedEnds } from './sentence.ts';

export interface Figure {
  /** "7.0", "none". */
  readonly figure: string;
  /** "mph"; empty: none. */
  readonly unit: string;
  readonly under: string;
}

export interface Figures {
  /** The slowest of its zones with it, where there are several. */
  readonly speed: Figure & { readonly slowest?: string };
  /** Undefined until the counts are told. */
  readonly cars: Figure | undefined;
  readonly gap: Figure;
}

type Shown = Omit<Voice, 'outing'>;

/** "7.0 mph" → figure and unit. */
const split = (told: string): Pick<Figure, 'figure' | 'unit'> => {
  const [figure = '', ...unit] = told.split(' ');
  return { figure, unit: unit.join(' ') };
};

const withoutSpeed: Readonly<Partial<Record<Verdict, string>>> = { hold: 'none', unknown: '?' };

/** Whoever may not leave is told no speed and no gap. */
export function figures({ asked: { outing }, answer }: Told, shown: Shown): Figures {
  const without = withoutSpeed[answer.verdict];
  const stands = staysHere(answer.verdict) ?? 'not until it is known';
  const away = { figure: without ?? '', unit: '', under: stands };
  const ends = speedEnds(answer, shown);
  const told = (si: number): string => drivenSpeed(shown, si);
  const slowest =
    ends && told(ends.slowest.speed) !== told(ends.fastest.speed) ? told(ends.slowest.speed) : undefined;
  const gap = gapToKeep(answer, outing);
  const today = answer.cars.find((c) => c.railState === outing.conditions.railState);
  const here = outing.train.vehicles.filter(isCar).length;
  return {
    speed:
      without === undefined && ends
        ? {
            ...split(told(ends.fastest.speed)),
            under: slowest === undefined ? 'all along' : `${slowest} at the slowest`,
            ...(slowest === undefined ? {} : { slowest }),
          }
        : away,
    cars: today && {
      figure: today.least === null && today.by === null ? '?' : leastWords(today),
      unit: !today.least ? '' : today.least === 1 ? 'car' : 'cars',
      under:
        today.least === null
          ? `${here} here`
          : `${today.least === 0 ? 'the engine alone' : 'at most'}; ${here} here`,
    },
    gap:
      without !== undefined || gap === undefined
        ? { ...away, figure: without ?? '?', under: stands }
        : gap === ALONE
          ? { figure: ALONE, unit: '', under: NO_OTHER_TRAIN }
          : { ...split(distance(shown, gap, 'up')), under: 'behind the train ahead' },
  };
}

/** Word, speed, cars and gap of one answer, as they stand beside those of another. */
export interface Standing {
  readonly verdict: Verdict;
  readonly word: string;
  /** The fastest zone, and the slowest where there are several: "7 mph, 4 mph". */
  readonly speed: string;
  /** Undefined until the counts are told. */
  readonly cars: string | undefined;
  readonly gap: string;
}

export function standing(told: Told, shown: Shown): Standing {
  const { speed, cars, gap } = figures(told, shown);
  const words = ({ figure, unit }: Figure): string => `${figure} ${unit}`.trim();
  const { verdict } = told.answer;
  return {
    verdict,
    word: tellVerdict(verdict),
    speed: speed.slowest === undefined ? words(speed) : `${words(speed)}, ${speed.slowest}`,
    cars: cars && words(cars),
    gap: words(gap),
  };
}

export const standingHead = ['word', 'at most', 'cars', 'behind'] as const;

/** The same in one line; whoever may not leave is told no speed and no gap. */
export const tellStanding = ({ verdict, word, speed, cars, gap }: Standing): string =>
  [
    word,
    ...(withoutSpeed[verdict]
      ? [`cars: ${cars ?? '…'}`]
      : [`at most ${speed}`, cars ?? '…', gap === ALONE ? gap : `${gap} behind`]),
  ].join('; ');

/** What of one answer stands otherwise in another, the word first, in a line. */
export function tellDifference(was: Standing, now: Standing): string {
  const leave = ![was, now].some(({ verdict }) => withoutSpeed[verdict]);
  const unlike = (a: string | undefined, b: string | undefined, what = ''): string[] =>
    a === undefined || b === undefined || a === b ? [] : [`${a} → ${b}${what}`];
  const parts = [
    ...unlike(was.word, now.word),
    ...(leave ? unlike(was.speed, now.speed) : []),
    ...unlike(was.cars, now.cars),
    ...(leave ? unlike(was.gap, now.gap, ' behind') : []),
  ];
  if (parts.length === 0) return `${now.word}, as before`;
  return (was.word === now.word ? [`${now.word}, as before`, ...parts] : parts).join('; ');
}
