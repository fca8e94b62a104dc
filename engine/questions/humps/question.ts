/** Does anything ground, or a wheel lift, over crests and sags? */
import type { Question } from '../question.ts';
import { askHumps } from './ask.ts';
import { humpFindings } from './findings.ts';
import type { HumpFit } from './look.ts';

export const humps: Question<readonly HumpFit[]> = {
  id: 'humps',
  reads: ['line', 'direction', 'train', 'riders', 'assumed'],
  findings: humpFindings,
  ask: ({ context }) => askHumps(context),
};
