/** The answer before and after a test was applied: word, figures, sentence, and the careful stop at one place and speed. */
import { wholeAnswer } from '../../engine/answer/complete.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { type Read, readOuting } from '../../papers/index.ts';
import { type CarefulStop, shorterWords } from '../../words/measured/stop-parts.ts';
import type { Voice } from '../../words/voice.ts';
import { asking, telling } from '../asked.ts';
import { type Standing, standing } from '../figures.ts';
import { sentence } from '../sentence.ts';
import type { Json } from './apply.ts';
import { carefulStop } from './stop-parts.ts';

export interface Stood extends Standing {
  readonly sentence: string;
}

/** Two answers, and the stop of both from where it was longest before. */
export interface Beside {
  readonly answers: readonly [was: Answer, now: Answer];
  readonly stops?: readonly [was: CarefulStop, now: CarefulStop];
}

export interface BeforeAfter {
  readonly was: Stood;
  readonly now: Stood;
  /** "careful stop from 5 mph at 320 ft: 118 ft → 104 ft" */
  readonly stop?: string;
}

export const outingIn = (paper: Json): Promise<Read<Outing>> =>
  readOuting({ path: 'outing', content: JSON.stringify(paper) }, async () => undefined);

/** With the counts of today's rail. */
export function answersBeside(before: Outing, after: Outing): Beside {
  const [old, fresh] = [inquire(before), inquire(after)];
  const answer = (inquiry: typeof old): Answer => wholeAnswer(inquiry, { remedies: false, counts: 'today' });
  const answers = [answer(old), answer(fresh)] as const;
  const was = carefulStop(old);
  const now = was && carefulStop(fresh, was);
  return { answers, ...(was && now ? { stops: [was, now] as const } : {}) };
}

/** @param papers of both, as they are written */
export function toldBeside(
  papers: readonly [Json, Json],
  outings: readonly [Outing, Outing],
  { answers, stops }: Beside,
  speech: Omit<Voice, 'outing'>,
): BeforeAfter | undefined {
  const [was, now] = [0, 1].map((i) => stoodAt(papers[i], outings[i], answers[i], speech));
  if (!was || !now) return undefined;
  return { was, now, ...(stops ? { stop: shorterWords(...stops, speech) } : {}) };
}

function stoodAt(
  paper: Json,
  outing: Outing,
  answer: Answer,
  speech: Omit<Voice, 'outing'>,
): Stood | undefined {
  const asked = asking(paper, outing);
  const told = telling(asked, { id: asked.id, answer });
  return told ? { ...standing(told, speech), sentence: sentence(answer, { ...speech, outing }) } : undefined;
}
