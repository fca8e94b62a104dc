/** The drawings on a running card: the strip, and the line from above where its curves are written. */

import type { Told } from '../desk/asked.ts';
import { heeded } from '../desk/card.ts';
import type { Voice } from '../words/voice.ts';
import { drawPlan, openPlan } from './plan/draw.ts';
import { planWords } from './plan/words.ts';
import { drawStrip } from './strip/draw.ts';
import type { Scene } from './strip/scene.ts';
import { stillHead } from './strip/still.ts';
import { stripModel } from './strip/svg.ts';
import { stripWords } from './strip/words.ts';

/** Drawn so large that its words can be read on paper, and marked with what stands on the card. */
export function cardStrip(told: Told, speech: Omit<Voice, 'outing'>): Scene {
  const { outing } = told.asked;
  const voice = { ...speech, outing };
  const model = stripModel(outing, told.answer, voice);
  const marks = model.marks.filter((m) => heeded(m.severity));
  const view = { width: 520, height: 300, from: 0, to: outing.line.length, textSize: 13 };
  const head = stillHead(outing, model.train?.length ?? 0);
  // The card says over all of it that it is not to be run by.
  return drawStrip({ ...model, marks, notToRun: '' }, view, stripWords(voice), { head, speed: 0 });
}

/** Smaller than the strip, its letters no smaller than they may be on paper; undefined: no curve is written. */
export function cardPlan(
  { asked: { outing }, answer }: Told,
  speech: Omit<Voice, 'outing'>,
): Scene | undefined {
  const voice = { ...speech, outing };
  const model = stripModel(outing, answer, voice);
  const words = planWords(voice);
  const plan = openPlan(outing, model, { width: 400, height: 200, textSize: 12 }, words);
  return plan && drawPlan(model, plan, words);
}
