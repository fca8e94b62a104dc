/** What was written into the papers, what was not and why, in sentences. */
import { inWording, type Wording } from '../voice.ts';
import { resultName } from './tests.ts';

const whys = {
  'no-place': 'the papers keep it row by row: write it down there yourself',
  'no-rail': 'the record does not say what the rail was',
  'not-here': 'what it is of is not in this paper, or several are and nobody says which',
} as const;

export const notWrittenWords = (
  { key, why }: { readonly key: string; readonly why: keyof typeof whys },
  wording: Wording,
): string => {
  const name = inWording(resultName(key), wording);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} is not written: ${whys[why]}.`;
};

export const writtenWords = (fields: number): string =>
  fields === 0
    ? 'Nothing was written.'
    : `${fields === 1 ? 'One figure' : `${fields} figures`} written, with bounds, source and day; the record is kept with the paper and can be taken back.`;

export const takenBackWords = (name: string, stays: readonly string[]): string =>
  `“${name}” is taken back: what stood there before stands there again.${stays.length > 0 ? ` As it was left: ${stays.join(', ')}, written anew since or no longer here.` : ''}`;
