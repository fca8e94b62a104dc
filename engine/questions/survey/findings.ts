import { alongside } from '../../things/line/types.ts';

/** What this question can find, and the kinds of the facts. */
export const surveyFindings = {
  'track-not-told': { track: 'name', lacks: alongside as typeof alongside },
  'structure-beside-track': { track: 'name', structure: 'name' },
  'heights-poor': { quality: ['gps', 'assumed'] },
} as const;
