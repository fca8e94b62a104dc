/** The words for what is tried: apart from what is asked and told, which does not wait for them. */
import { tellChange } from '../words/change.ts';
import type { Voice } from '../words/voice.ts';
import type { Asked } from './asked.ts';

/** What is tried, a line for each change; each names the vehicles as they stood before it. */
export const tellTrials = ({ trials }: Asked, voice: Omit<Voice, 'outing'>): string[] =>
  trials.map(({ change, from }) => tellChange(change, { ...voice, outing: from }));
