/** Is whoever works the train rested, fit, old enough, and where the host wants somebody? */
import type { Question } from '../question.ts';
import { askCrew } from './ask.ts';
import { crewFindings } from './findings.ts';

export const crew: Question<null> = {
  id: 'crew',
  reads: ['host', 'train', 'riders', 'conditions', 'crew', 'signals', 'assumed'],
  findings: crewFindings,
  ask: ({ context }) => ({ findings: askCrew(context.outing), data: null }),
};
