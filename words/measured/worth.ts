/** What a test is worth to the answer, in a sentence. */
import type { TestKind } from '../../engine/calibrate/tests/index.ts';
import { inWording, say, type Voice } from '../voice.ts';
import { testNames } from './tests.ts';

/** How many cars may be taken, now and after the test: as it most likely finds, and at either end of that. */
export interface CarsAfter {
  readonly now: number;
  readonly likely: number;
  readonly least: number;
  readonly most: number;
  readonly mean: number;
}

/** What a test would do to the answer. */
export interface Worth {
  readonly kind: TestKind;
  /** Names of the vehicles that it is of, of which the same is assumed; absent: of the whole. */
  readonly of?: readonly string[];
  /** For all of them. */
  readonly minutes: number;
  /** Findings that cannot tell for want of it. */
  readonly asked: number;
  /** Share of what it may find that changes the word. */
  readonly changesWord: number;
  /** Of what it may find, where the word is better than now. */
  readonly bettersWord: number;
  /** Mean over the line and over what it may find: permitted speed then, less now, m/s. */
  readonly faster: number;
  /** Cars that may be taken; absent: not asked, or nobody can tell it now. */
  readonly cars?: CarsAfter;
}

/** Slower than this nobody sees, m/s. */
const SEEN = 0.05;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "Coast-down (20 minutes): in 3 of 5 cases the word is better after it." */
export function worthWords(worth: Worth, voice: Pick<Voice, 'system' | 'wording'>): string {
  const parts = partsOf(worth, voice);
  return inWording(
    `${capital(testNames[worth.kind])}${worth.of ? `, ${worth.of.join(', ')}` : ''} (${worth.minutes} minutes): ${parts.length > 0 ? parts.join('; ') : 'it would hardly change the answer'}.`,
    voice.wording,
  );
}

/** Those that change something, and in one line those that would hardly change the answer. */
export function worthLines<W extends Worth>(
  worths: readonly W[],
  voice: Pick<Voice, 'system' | 'wording'>,
): { readonly told: readonly { readonly worth: W; readonly words: string }[]; readonly hardly?: string } {
  const changes = (worth: W): boolean => partsOf(worth, voice).length > 0;
  const rest = worths.filter((worth) => !changes(worth));
  const names = rest.map(({ kind, of }) => `${testNames[kind]}${of ? ` of ${of.join(', ')}` : ''}`);
  return {
    told: worths.filter(changes).map((worth) => ({ worth, words: worthWords(worth, voice) })),
    ...(names.length > 0
      ? {
          hardly: inWording(`It would hardly change the answer to make: ${names.join('; ')}.`, voice.wording),
        }
      : {}),
  };
}

function partsOf(
  { asked, changesWord, bettersWord, faster, cars }: Worth,
  voice: Pick<Voice, 'system'>,
): string[] {
  const share = (of: number): string => `${Math.round(of * 100)} in 100`;
  const worse = changesWord - bettersWord;
  return [
    ...(asked > 0 ? ['the answer cannot be told without it'] : []),
    ...(bettersWord > 0 ? [`the word would be better after it in ${share(bettersWord)} cases`] : []),
    ...(worse > 1e-9 ? [`worse in ${share(worse)}`] : []),
    ...(cars ? carsParts(cars) : []),
    ...(Math.abs(faster) >= SEEN
      ? [
          `on the mean ${say(voice, { si: Math.abs(faster), kind: 'speed' })} ${faster > 0 ? 'faster' : 'slower'}`,
        ]
      : []),
  ];
}

/** "it would most likely let you take five cars instead of three" */
function carsParts({ now, likely, least, most }: CarsAfter): string[] {
  const range = least === most ? '' : ` (${number(least)} to ${number(most)})`;
  if (likely > now)
    return [`it would most likely let you take ${carsWord(likely)} instead of ${number(now)}${range}`];
  if (likely < now)
    return [
      `it would most likely show that you may take ${likely === 0 ? '' : 'no more than '}${carsWord(likely)} instead of ${number(now)}${range}`,
    ];
  if (least === most) return [];
  return [
    `most likely ${carsWord(now)} as now, but it may be ${least < now ? number(least) : ''}${least < now && most > now ? ' or ' : ''}${most > now ? number(most) : ''}`,
  ];
}

const small = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const number = (n: number): string => small[n] ?? `${n}`;
const carsWord = (n: number): string => (n === 0 ? 'no car' : n === 1 ? 'one car' : `${number(n)} cars`);
