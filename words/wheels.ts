/** Wheels that run light, in words. */
import { chainage, type Voice } from './voice.ts';

/** Rounded down: never more load than there is. */
export const shareLeft = (share: number): string => `${Math.floor(share * 100 + 1e-9)} %`;

export const tellLightWheel = (
  voice: Voice,
  { at, share, by }: { readonly at: number; readonly share: number; readonly by: number },
): string =>
  `${voice.outing.train.vehicles[by]?.name ?? 'the train'} at ${chainage(voice, at)}: ${shareLeft(share)} of its load left`;

/** What the line of the lightest wheel leaves out. */
export const tellUnweighed = (voice: Voice, unknown: readonly number[]): string | undefined =>
  unknown.length === 0
    ? undefined
    : `Cannot tell for ${unknown.map((i) => voice.outing.train.vehicles[i].name).join(', ')}: measure where the centre of gravity is`;

/** The thin places of a line, or the lightest of all where none is thin. */
export const lightHeading = (thin: boolean): string => (thin ? 'Where wheels run light' : 'Lightest wheel');
