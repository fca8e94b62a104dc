/** Do the couplers stay in hold over crests and sags, with people on? */
import type { Question } from '../question.ts';
import { askCrests, type CrestsData } from './ask.ts';
import { crestFindings } from './findings.ts';

export const crests: Question<CrestsData> = {
  id: 'crests',
  reads: ['line', 'direction', 'train', 'riders', 'assumed'],
  findings: crestFindings,
  ask: ({ context }) => askCrests(context),
};
