/** The answer before and after a test was applied: word, figures and sentence. */
import type { Answer } from '../../engine/answer/types.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { type Read, readOuting } from '../../papers/index.ts';
import type { Voice } from '../../words/voice.ts';
import { asking, telling } from '../asked.ts';
import { type Standing, standing } from '../figures.ts';
import { sentence } from '../sentence.ts';
import type { Json } from './apply.ts';

export interface Stood extends Standing {
  readonly sentence: string;
}

export const outingIn = (paper: Json): Promise<Read<Outing>> =>
  readOuting({ path: 'outing', content: JSON.stringify(paper) }, async () => undefined);

/** @param answer to `outing`, with the counts of today's rail */
export function stoodAt(
  paper: Json,
  outing: Outing,
  answer: Answer,
  speech: Omit<Voice, 'outing'>,
): Stood | undefined {
  const asked = asking(paper, outing);
  const told = telling(asked, { id: asked.id, answer });
  return told ? { ...standing(told, speech), sentence: sentence(answer, { ...speech, outing }) } : undefined;
}
