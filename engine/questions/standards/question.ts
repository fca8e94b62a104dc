/** Does every vehicle meet the host's sheet? */
import type { Question } from '../question.ts';
import { askStandards } from './ask.ts';
import { standardFindings } from './findings.ts';
import type { Compared } from './look.ts';

export const standards: Question<readonly Compared[]> = {
  id: 'standards',
  reads: ['host', 'train', 'riders', 'assumed'],
  findings: standardFindings,
  ask: ({ context }) => askStandards(context),
};
