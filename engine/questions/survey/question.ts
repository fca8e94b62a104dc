/** How good is the survey of the line? */

import type { Question } from '../question.ts';
import { askSurvey } from './ask.ts';

export const survey: Question<null> = {
  id: 'survey',
  reads: ['line'],
  codes: ['heights-poor'],
  ask: ({ context }) => ({ findings: askSurvey(context), data: null }),
};
