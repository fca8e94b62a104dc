/** Leaving and arriving, in words. */
import type { Check } from '../../papers/record/fields.ts';

/** What a driver ticks: done, nothing else. */
export const checkWords: Readonly<Record<Check, string>> = {
  'brake-test': 'Brake tested on the made-up train: on and off at the last car',
  'hose-off': 'Hose-off test: with the hose parted the cars’ brakes come on and hold',
  signals: 'Driver and guard agree on their signals',
  lights: 'Headlight lit, marker at the rear',
  briefed: 'Riders briefed: seated, face forward, hands and feet in, nothing is fetched',
};

const skyAsked = {
  lightning: 'nobody has said whether lightning is about, and the host has a rule for it: look and listen',
  wind: 'nobody has said how hard the wind blows in gusts, and the host has a limit',
  heat: 'nobody has said how hot it is in the shade, and the host has a limit',
  night: 'nobody has said whether it runs after dark, and the host has a rule for it',
} as const;

/** "what is not done": one for each kind of hindrance. */
export const hindranceWords = {
  word: { hold: 'the word is hold', unknown: 'the word is cannot tell' },
  check: (check: Check): string => `not seen to: ${checkWords[check]}`,
  day: (of: string, today: string): string => `the outing is of ${of}, and this is ${today}`,
  driver: 'nobody drives this train',
  sky: (of: 'lightning' | 'wind' | 'heat' | 'night'): string => skyAsked[of],
  records: 'what is recorded here of its vehicles, people and line could not be asked',
  rejected: (list: string, of: string): string =>
    `something is rejected on a list that is not recorded (${list}, of ${of === '' ? 'nothing named yet' : of}): record it, or say it anew`,
  out: (departure: string): string => `one of its vehicles left (${departure}) and has not arrived`,
  amiss: (faults: number): string =>
    `${faults === 1 ? 'one thing is' : `${faults} things are`} amiss in the records: what is not as it was written counts for nothing, be it what shuts the line (verify tells what)`,
} as const;
