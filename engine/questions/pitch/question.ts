/** Do bars and links turn up and down as far as crests, sags and the heights of their vehicles ask? */
import { assumptionFindings } from '../assumptions/findings.ts';
import type { Question } from '../question.ts';
import { askPitch, type PitchData } from './ask.ts';
import { pitchFindings } from './findings.ts';

export const pitch: Question<PitchData> = {
  id: 'pitch',
  reads: ['line', 'direction', 'train', 'riders', 'assumed'],
  findings: { ...pitchFindings, assumed: assumptionFindings.assumed },
  ask: ({ context }) => askPitch(context),
};
