/** Of which vehicles it cannot be told what they take beside the track, and what to measure of them and how. */
import { tellMeasure } from './field.ts';
import type { Voice } from './voice.ts';

/** "Nobody measured how wide and how high A, B are. Measure …" Empty where there are none. */
export const unmeasuredWords = (names: readonly string[], { wording }: Pick<Voice, 'wording'>): string =>
  names.length === 0
    ? ''
    : `Nobody measured how wide and how high ${names.join(', ')} ${names.length === 1 ? 'is: measure' : 'are: measure of each'} ${tellMeasure('vehicle.envelope', wording)}.`;

export const cannotStandWords = (names: readonly string[]): string =>
  names.length === 0
    ? ''
    : `${names.join(', ')} cannot stand in a curve of this line: measure its radius again, and where trucks or outer axles are.`;

/** Both, each a sentence. */
export const notToldWords = (
  {
    unmeasured,
    cannotStand,
  }: { readonly unmeasured: readonly string[]; readonly cannotStand: readonly string[] },
  voice: Pick<Voice, 'wording'>,
): string =>
  [unmeasuredWords(unmeasured, voice), cannotStandWords(cannotStand)].filter((w) => w !== '').join(' ');
