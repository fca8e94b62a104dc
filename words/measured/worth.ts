/** What a test is worth to the answer, in a sentence. */
import type { TestKind } from '../../engine/calibrate/tests/index.ts';
import { inWording, say, type Voice } from '../voice.ts';
import { testNames } from './tests.ts';

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
  /** Mean of the number of cars that may be taken then, less now; absent: not asked, or nobody can tell it now. */
  readonly moreCars?: number;
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

function partsOf(
  { asked, changesWord, bettersWord, faster, moreCars }: Worth,
  voice: Pick<Voice, 'system'>,
): string[] {
  const share = (of: number): string => `${Math.round(of * 100)} in 100`;
  const worse = changesWord - bettersWord;
  return [
    ...(asked > 0 ? ['the answer cannot be told without it'] : []),
    ...(bettersWord > 0 ? [`the word would be better after it in ${share(bettersWord)} cases`] : []),
    ...(worse > 1e-9 ? [`worse in ${share(worse)}`] : []),
    ...(moreCars !== undefined && Math.abs(moreCars) >= 0.2
      ? [`on the mean ${Math.abs(moreCars).toFixed(1)} cars ${moreCars > 0 ? 'more' : 'fewer'}`]
      : []),
    ...(Math.abs(faster) >= SEEN
      ? [
          `on the mean ${say(voice, { si: Math.abs(faster), kind: 'speed' })} ${faster > 0 ? 'faster' : 'slower'}`,
        ]
      : []),
  ];
}
