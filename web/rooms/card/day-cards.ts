/** The cards of the other trains of the day, each from an answer of its own. */
import { asking, telling } from '../../../desk/asked.ts';
import { readOuting } from '../../../papers/index.ts';
import { cardMade } from '../../../views/card-made.ts';
import type { CardOnPaper } from '../../../views/card-paper.ts';
import type { Voice } from '../../../words/voice.ts';
import { answerAside } from '../../parts/answer-aside.ts';
import { silence } from '../../state/at-hand.ts';
import type { Json } from '../../state/session.ts';
import { withRecorded } from '../../state/shown.ts';
import { version } from '../../state/version.ts';

/** Throws, with its name and the reason, where one has no card: none of a day is left out unseen. */
export async function dayCard(written: Json, speech: Omit<Voice, 'outing'>): Promise<CardOnPaper> {
  const name = String(written['name']);
  const paper = withRecorded(written);
  const read = await readOuting({ path: name, content: JSON.stringify(paper) }, async () => undefined);
  if (!read.ok) throw new Error(`${name} cannot be read: ${read.problems[0]?.message ?? 'it is broken'}`);
  const asked = asking(paper, read.value);
  const answer = await answerAside(asked.outing).catch((fault: Error) => {
    throw new Error(`${name} has no answer: ${fault.message}`);
  });
  const told = telling(asked, { id: asked.id, answer });
  if (!told) throw new Error(`${name} has no answer`);
  return cardMade(told, speech, version, silence.value);
}
