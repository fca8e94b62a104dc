/** The answer before and after a test was applied: word, figures and sentence. */
import { wholeAnswer } from '../../engine/answer/complete.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import { readOuting } from '../../papers/index.ts';
import type { Voice } from '../../words/voice.ts';
import { asking, telling } from '../asked.ts';
import { type Standing, standing, tellDifference } from '../figures.ts';
import { sentence } from '../sentence.ts';
import type { Json } from './apply.ts';

export interface Stood extends Standing {
  readonly sentence: string;
}

/** Undefined: the paper cannot be read. */
export async function stoodAt(paper: Json, speech: Omit<Voice, 'outing'>): Promise<Stood | undefined> {
  const read = await readOuting({ path: 'outing', content: JSON.stringify(paper) }, async () => undefined);
  if (!read.ok) return undefined;
  const asked = asking(paper, read.value);
  const answer = wholeAnswer(inquire(read.value), { remedies: false, counts: 'today' });
  const told = telling(asked, { id: asked.id, answer });
  if (!told) return undefined;
  return { ...standing(told, speech), sentence: sentence(answer, { ...speech, outing: read.value }) };
}

export const differs = (was: Stood, now: Stood): string => tellDifference(was, now);
