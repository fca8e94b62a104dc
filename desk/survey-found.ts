/** What was found in a survey, as one looks at it before it is taken. */
import type { Line } from '../engine/things/line/types.ts';
import { several } from '../words/several.ts';
import { distance, type Voice } from '../words/voice.ts';

export const surveyFound = (
  { length, loop, heights, curves, places }: Line,
  voice: Pick<Voice, 'system'>,
): string =>
  `${distance(voice, length, 'nearest')} ${loop ? 'round' : 'end to end'}, ${several(heights.length, 'height')}, ${several(curves.length, 'curve')}, ${several(places.length, 'place')}.`;
