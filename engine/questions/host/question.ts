/** Does the outing keep the host's rules? */

import type { Question } from '../question.ts';
import { askHost } from './ask.ts';
import { hostFindings } from './findings.ts';

export const host: Question<null> = {
  id: 'host',
  reads: ['line', 'train', 'chains', 'riders', 'host', 'conditions'],
  findings: hostFindings,
  ask: ({ context }) => ({ findings: askHost(context), data: null }),
};
