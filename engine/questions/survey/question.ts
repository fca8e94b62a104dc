/** How good is the survey of the line? */

import type { Question } from '../question.ts';
import { askSurvey } from './ask.ts';
import { surveyFindings } from './findings.ts';

export const survey: Question<null> = {
  id: 'survey',
  reads: ['line', 'direction'],
  findings: surveyFindings,
  ask: ({ context }) => ({ findings: askSurvey(context), data: null }),
};
