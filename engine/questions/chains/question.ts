/** Do the safety chains hold what parts? */

import type { Question } from '../question.ts';
import { askChains } from './ask.ts';
import { chainFindings } from './findings.ts';
import type { ChainRow } from './row.ts';

export const chains: Question<ChainRow[]> = {
  id: 'chains',
  reads: ['line', 'direction', 'train', 'chains', 'riders', 'conditions', 'assumed', 'host'],
  findings: chainFindings,
  ask: ({ context, ready }) => askChains(context, ready.brakes.groups),
};
