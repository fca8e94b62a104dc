/** Do these wheels run on this track? */
import type { Question } from '../question.ts';
import { askWheels, type WheelsData } from './ask.ts';
import { wheelFindings } from './findings.ts';

export const wheels: Question<WheelsData> = {
  id: 'wheels',
  reads: ['line', 'direction', 'train', 'assumed', 'host', 'day'],
  findings: wheelFindings,
  ask: ({ context }) => askWheels(context),
};
